// The colours of every picture: paper, ink, and one printer's red.

/** Colours of one diagram. `ground` null leaves the paper transparent. */
export interface DiagramInks {
  readonly ground: string | null;
  readonly light: string;
  readonly dark: string;
  readonly hatch: string;
  readonly line: string;
  readonly whiteMan: string;
  readonly blackMan: string;
  readonly red: string;
}

const PAPER: DiagramInks = {
  ground: '#fbf8f0',
  light: '#fbf8f0',
  dark: '#e6dfce',
  hatch: '#8a93a3',
  line: '#1b2430',
  whiteMan: '#fffdf6',
  blackMan: '#1b2430',
  red: '#b3261e',
};

/** Paper, ink paper (dark mode), and paper without a ground for laying over something else. */
export const DIAGRAM_INKS: Readonly<Record<'paper' | 'ink' | 'clear', DiagramInks>> = {
  paper: PAPER,
  ink: {
    ...PAPER,
    ground: '#12171f',
    light: '#d9d3c3',
    dark: '#b9b2a1',
    hatch: '#59616e',
    line: '#efe8d8',
    blackMan: '#12171f',
  },
  clear: { ...PAPER, ground: null },
};
