/** Which units a reader sees. Everything inside is SI; only printing and reading know about this. */
export type UnitSystem = "metric" | "us";
