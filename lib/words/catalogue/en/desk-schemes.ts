// Sentences of the desk's page of marking schemes in English.

export const deskSchemesEn = {
  'nav-schemes': 'Marking',
  'schemes-intro':
    'Numbers that you change hold for puzzles set from then on. A puzzle keeps the version that its viewers were shown.',
  'scheme-head-full-line': 'Full line',
  'scheme-head-key-move': 'Key move',
  'scheme-version': 'Version {version, number}',
  'scheme-solved': 'Solved',
  'scheme-slower': 'Mates, but later',
  'scheme-base': 'A good first move, at least',
  'scheme-per-line': 'For the part that is right, up to',
  'scheme-example-full-line':
    'Two of three moves right earn {part, number} of {solved, number}. Kinder than solving contests, which give nothing for the first move alone.',
  'scheme-example-key-move': 'The first move alone decides, whatever follows.',
  'scheme-save': 'Save as a new version',
  'scheme-saved': 'Version {version, number} holds for puzzles set from now on.',
  'scheme-wrong-not-a-number':
    '{field, select, solved {Solved} slower {Mates, but later} base {A good first move} other {The part of the line}}: a whole number from {least, number} to {most, number} is expected.',
  'scheme-wrong-slower-above-solved': 'A later mate cannot earn more than a solved answer.',
  'scheme-wrong-part-above-solved':
    'The first move and the part of the line together cannot earn more than a solved answer.',
} as const;
