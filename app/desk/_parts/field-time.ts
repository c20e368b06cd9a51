import { wallTimeIn } from '#lib/kit/zoned-time.ts';

/** A moment as a field for date and time takes it, in a zone: `2026-11-27T18:00`. */
export function fieldTime(moment: Date, zone: string): string {
  const { year, month, day, hour, minute } = wallTimeIn(moment, zone);
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}
