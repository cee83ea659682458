import type { Pen } from "../layer.ts";

/** `open` where the number is early and has no interval; `even` stands for the chance about the own centre. */
export type MarkForm = "dot" | "diamond" | "tick";

interface IntervalAt {
  /** px */
  readonly at: number;
  readonly y: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly form: MarkForm;
  readonly open?: boolean;
}

const REACH: Readonly<Record<MarkForm, number>> = { dot: 4, diamond: 5, tick: 5 };

/** An estimate with its interval as a level line: a dot, a diamond or an upright tick. */
export function intervalMark({ at, y, low, high, form, open = false }: IntervalAt, pen: Pen): readonly SVGElement[] {
  const soft = form === "tick";
  const line =
    low === null || high === null
      ? []
      : [
          pen.element("path", {
            class: soft ? "tick" : "rule",
            "stroke-width": soft ? 1 : 1.6,
            d: `M${low},${y}H${high}`,
          }),
        ];
  const reach = REACH[form];
  const className = open ? "hollow" : "mark-ink";
  const mark =
    form === "dot"
      ? pen.element("circle", { class: className, cx: at, cy: y, r: reach })
      : form === "diamond"
        ? pen.element("path", {
            class: className,
            d: `M${at},${y - reach}l${reach},${reach}l${-reach},${reach}l${-reach},${-reach}z`,
          })
        : pen.element("path", { class: "tick", "stroke-width": 1.6, d: `M${at},${y - reach}v${2 * reach}` });
  return [...line, mark];
}

/** Words at a place on the paper. */
export function wordsAt(
  pen: Pen,
  text: string,
  place: {
    readonly x: number;
    readonly y: number;
    readonly role: string;
    readonly anchor?: "start" | "middle" | "end";
  },
): SVGElement {
  return pen.element("text", { class: place.role, x: place.x, y: place.y, "text-anchor": place.anchor ?? "start" }, [
    text,
  ]);
}
