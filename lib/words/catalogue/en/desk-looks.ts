// Sentences about second looks, for the desk, in English.

export const deskLooksEn = {
  'doubtful-label-look': 'Second look: {subject}',
  'doubtful-title-look': 'Second look',
  'doubtful-about-look': 'One person asks that the mark be looked at again. Your word stands on the receipt.',
  'look-no-words': 'No words were given.',
  'look-says': 'What the viewer says',
  'look-sent': 'What was sent',
  'look-mark': 'The mark in force',
  'look-stands-key': 'The mark stands',
  'look-reply': 'reply',
  'look-reply-hint':
    'Up to 500 characters; the viewer reads it. Left empty, a fixed sentence stands there. Escape leads back to the keys.',
  'look-settled': 'Settled. The viewer can read it now.',
  'look-pick':
    'The mark has changed since this page was opened. Look at it again, then press one of the keys.',
  'look-why': 'After a second look',
  'settle-unknown-look': 'Somebody has settled this look meanwhile, or the answer was withdrawn.',
  'settle-too-long': 'The reply has {length, number} characters; at most {most, number} are taken.',
  'looks-waiting': '{count, plural, one {One second look waits} other {# second looks wait}} for you.',
  'look-on-mark': 'Second look',
  'look-waits': 'It waits for you.',
  'look-to-list': 'Settle it',
  'look-done-stands': 'Settled by {who}, {at}: the mark stands.',
  'look-done-changed': 'Settled by {who}, {at}: the mark was changed.',
  'look-your-reply': 'The reply',
} as const;
