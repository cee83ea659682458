import type { VarietyDetail, VarietyScore } from "../../report/varietiesResult.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { inHundred, metWords, scoreRange } from "./scoreWords.ts";
import { riseWithoutLot, startsWith } from "./varietyReasons.ts";

/** The page of one variety: how even it is, and what pulls it down. */
export function varietyAnswer(
  variety: string,
  score: VarietyScore | undefined,
  detail: VarietyDetail | undefined,
): Sentence {
  if (score === undefined) return [`This choice holds no batch of ${variety}.`];
  const { onTarget, even, standing, tooLittle, allBatches } = score;
  if (standing === "none" || onTarget === null || even === null) {
    return [
      strong(variety),
      ` has no score yet: ${tooLittle ?? `${counted(allBatches, "batch", "batches")}, and a score needs five.`}`,
    ];
  }
  const start = startsWith(score, detail);
  return [
    strong(variety),
    ": on target ",
    strong(inHundred(onTarget.estimate)),
    `${scoreRange(onTarget)}, even `,
    strong(inHundred(even.estimate)),
    scoreRange(even),
    ...(start.length === 0 ? [] : ["; what pulls it down starts with ", ...start]),
    ".",
  ];
}

/** What the answer rests on, and what the score would be without the lot that stands out. */
export function varietyGrounds(
  score: VarietyScore | undefined,
  detail: VarietyDetail | undefined,
): readonly Sentence[] {
  if (score === undefined) return [];
  const { allBatches, batches, lots, met, metShare, standing } = score;
  const complete =
    batches === allBatches ? "" : `, ${counted(batches, "batch", "batches")} of them with every measure that counts`;
  const seen = batches === 0 ? "" : `; ${metWords(met, batches, metShare)} met every tolerance`;
  const early = standing === "early" ? " Early: an interval needs 12 batches." : "";
  return [
    [`${counted(allBatches, "batch", "batches")} from ${counted(lots, "grain lot")}${complete}${seen}.${early}`],
    riseWithoutLot(score, detail) > 0 ? withoutLotSentence(score, detail) : [],
  ];
}

/** `Without lot L7 it would be on target in 78 in 100, from 19 batches.` Empty where no lot stands out. */
export function withoutLotSentence({ onTarget }: VarietyScore, detail: VarietyDetail | undefined): Sentence {
  const without = detail?.withoutLot ?? null;
  if (without === null || onTarget === null) return [];
  const way =
    without.onTarget > onTarget.estimate + 0.5
      ? "rises"
      : without.onTarget < onTarget.estimate - 0.5
        ? "falls"
        : "stays";
  return [
    `With lot ${without.lot} left out, on target ${way} ${way === "stays" ? "at" : "to"} `,
    strong(inHundred(without.onTarget)),
    `, from ${counted(without.batches, "batch", "batches")}: no more than a guide, since the lot was picked by its own batches.`,
  ];
}
