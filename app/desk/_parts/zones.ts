/** Names of the time zones that this machine knows, for lists to pick from. */
export const ZONES: readonly string[] = [
  'UTC',
  ...Intl.supportedValuesOf('timeZone').filter((zone) => zone !== 'UTC'),
];
