// Who may do what on the desk? Owner and helper are members of a show; a viewer has no desk rights.

/** The roles that a member can have; `viewer` is everybody else. */
export type Role = 'owner' | 'helper' | 'viewer';

/** The deeds of the desk that ask for a right. */
export type DeskDeed =
  | 'look-at-desk'
  | 'settle-doubtful'
  | 'import-comments'
  | 'overrule-mark'
  | 'write-sheet-notes'
  | 'create-puzzle'
  | 'publish-puzzle'
  | 'close-puzzle'
  | 'extend-puzzle'
  | 'amend-puzzle'
  | 'reveal-puzzle'
  | 'void-puzzle'
  | 'regrade-puzzle'
  | 'change-show'
  | 'manage-members'
  | 'export-show';

const HELPER_DEEDS: ReadonlySet<DeskDeed> = new Set([
  'look-at-desk',
  'settle-doubtful',
  'import-comments',
  'overrule-mark',
  'write-sheet-notes',
]);

/**
 * Whether a role has the right to a deed. A helper settles doubtful answers, overrules and imports;
 * what changes the show, its puzzles or its members is the owner's. A viewer has none of it.
 */
export function may(role: Role, deed: DeskDeed): boolean {
  if (role === 'owner') return true;
  return role === 'helper' && HELPER_DEEDS.has(deed);
}

/** The role of a stored text; anything unknown is a viewer, so that a damaged row gives no rights. */
export function parseRole(text: string): Role {
  return text === 'owner' || text === 'helper' ? text : 'viewer';
}
