import type { SizeLimits } from "./ownLogFiles.ts";

export const sizeLimits: SizeLimits = { all: 2_000_000_000, oneFile: 2_000_000_000 };
