import { startOfLocalDay } from "./instant.ts";

/** `2026-10` for a year and a month of 1 to 12. */
export const nameOfMonth = (year: number, month: number): string => `${year}-${String(month).padStart(2, "0")}`;

/** The month so many months later, or earlier. @param name `2026-10` */
export function monthsOn(name: string, by: number): string {
  const [year = 0, month = 1] = name.split("-").map(Number);
  const count = year * 12 + month - 1 + by;
  return nameOfMonth(Math.floor(count / 12), (count % 12) + 1);
}

/** A month's first moment in a house's zone. @param name `2026-10` */
export const startOfMonth = (name: string, timeZone: string): number => startOfLocalDay(`${name}-01`, timeZone);

/** Path of a month's own review from the site's root. @param name `2026-10` */
export const monthPath = (name: string): string => `review/${name}/`;
