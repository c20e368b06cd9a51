// Sentences of correction notices in English, as viewers read them.

export const correctionsEn = {
  corrections: '{count, plural, one {Correction} other {Corrections}}',
  'corrected-position': 'The position was corrected.',
  'corrected-task': 'The task was corrected.',
  'corrected-conditions': 'The conditions of the task were corrected.',
  'corrected-keys': 'The published solution was corrected.',
  'corrected-nothing-shown': 'The puzzle was checked again. Position and task stand as they are.',
  'corrected-marking':
    'Answers are marked on what their sender saw; where that cannot be told, on whichever is kinder to them.',
  'close-was': 'The close was moved: formerly',
  'close-is': 'now',
  'correction-void': 'The puzzle was taken out of the count.',
  'check-corrected':
    'The puzzle was corrected while you were writing. Your line is read on the position that you saw, and marked on it if you send it.',
  'check-corrected-link': 'Look at the corrected puzzle first',
  'receipt-former':
    'The puzzle has been corrected. The position here is the one that your answer is marked on.',
  'receipt-former-link': 'The puzzle as it stands now',
} as const;
