/**
 * The share of the drying hold short of heat above which a load counts as power-limited and stays out of the fits: such
 * a load is slow for want of heat, not for its bed or its air. A tenth is this project's own choice, not a published
 * limit; every page that leaves a load out for it says so.
 */
export const POWER_LIMITED_SHARE = 0.1;

/** Whether a load of this share is left out. Without readings nothing speaks against it. */
export function isPowerLimited(share: number | null): boolean {
  return share !== null && share > POWER_LIMITED_SHARE;
}
