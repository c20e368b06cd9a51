import type { FormState } from '../../_parts/form-state.ts';

/** The form's state, with what was read of the position. */
export interface PuzzleFormState extends FormState {
  readonly look: {
    readonly svg: string;
    readonly caption: string;
    readonly plies: readonly { readonly ply: number; readonly label: string }[];
    readonly ply: number | null;
    readonly lines: readonly { readonly text: string; readonly read: string }[];
  } | null;
}
