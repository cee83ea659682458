import { writeFileSync } from "node:fs";

// Goes into the building process before its own script: at its end it writes down the most memory that it held, KiB.

const note = process.env.PIECEBOOK_PEAK_NOTE;
if (note) process.on("exit", () => writeFileSync(note, String(process.resourceUsage().maxRSS)));
