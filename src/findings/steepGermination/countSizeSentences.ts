import type { CountSize } from "../../report/steepGerminationResult.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { length } from "./measureWords.ts";

/** What the house's usual count can show. */
export function countSizeSentence({ usual, lengthSeen, kernelStandardDeviation }: CountSize): Sentence {
  return [
    `Two counts of ${counted(usual, "kernel")} mostly show a difference of `,
    strong(`${length(lengthSeen)} of the kernel`),
    ` in mean length, and mostly miss a smaller one: kernels of one count differ by ${length(kernelStandardDeviation)} among themselves (standard deviation).`,
  ];
}
