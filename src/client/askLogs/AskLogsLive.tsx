import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { AskLogs } from "../../bodies/AskLogs.tsx";
import type { AskHands, AskStage } from "../../bodies/ask/askState.ts";
import { BodyProvider, useBody } from "../../bodies/context.ts";
import { askedFigure } from "../../figures/ask/askedFigure.ts";
import { askFault } from "../../findings/ask/askFault.ts";
import { askQuestions } from "../../report/ask/askQuestions.ts";
import { askSchema } from "../../report/ask/askSchema.ts";
import type { AskedAnswer } from "../../tables/askedAnswer.ts";
import { askedCsv } from "../../tables/askedText.ts";
import { saveFile } from "../takeAway/saveFile.ts";
import type { Ask } from "./askCalls.ts";

/** Rows of an answer that come to the page; a saved file holds as many. */
const MOST_ROWS = 10_000;

const tables = askSchema();
const isWorked = (sql: string): boolean => askQuestions.some((one) => one.sql === sql);
const FIRST = askQuestions[0]?.sql ?? "";

async function answered(ask: Ask, sql: string, signal: AbortSignal): Promise<AskStage> {
  try {
    const answer = await ask(sql, { mostRows: MOST_ROWS, signal });
    return { kind: "answered", sql, answer, figure: askedFigure(answer) };
  } catch (error) {
    return { kind: "failed", fault: askFault(error instanceof Error ? error.message : String(error)) };
  }
}

/** The page that asks the logs, alive: the same body as the built one, with hands. */
export function AskLogsLive({ ask }: { readonly ask: Ask }) {
  const { standing: _, waits: __, ...context } = useBody();
  const [awake, setAwake] = useState(false);
  const [sql, setSql] = useState(FIRST);
  const [replaced, setReplaced] = useState<string | null>(null);
  const written = useRef(FIRST);
  const [stage, setStage] = useState<AskStage>({ kind: "none" });
  const running = useRef<AbortController | null>(null);
  const last = useRef<AskedAnswer | null>(null);

  // Taking the built page over changes nothing of it; the next drawing does.
  useEffect(() => {
    setAwake(true);
    return () => running.current?.abort();
  }, []);

  // An answer is of the logs that it was asked of: under others it would be read as theirs.
  const { house } = context;
  useEffect(() => {
    running.current?.abort();
    setStage((now) => (now.kind === "answered" || now.kind === "failed" ? { kind: "none" } : now));
  }, [house]);

  const asking = stage.kind === "asking";
  useEffect(() => {
    if (!asking) return;
    const clock = setInterval(
      () => setStage((now) => (now.kind === "asking" ? { ...now, seconds: now.seconds + 1 } : now)),
      1000,
    );
    return () => clearInterval(clock);
  }, [asking]);

  const hands = useMemo<AskHands | null>(() => {
    if (!awake) return null;
    return {
      type(text) {
        written.current = text;
        setSql(text);
        setReplaced(null);
      },
      putBack() {
        setReplaced((own) => {
          if (own !== null) {
            written.current = own;
            setSql(own);
          }
          return null;
        });
      },
      ask(wanted) {
        if (running.current !== null) return;
        const stopping = new AbortController();
        running.current = stopping;
        // A worked question takes the place of what was typed: hours may be in it.
        const own = written.current;
        if (own !== wanted && !isWorked(own)) setReplaced(own);
        written.current = wanted;
        setSql(wanted);
        setStage({ kind: "asking", seconds: 0, stopping: false });
        void answered(ask, wanted, stopping.signal).then((next) => {
          running.current = null;
          last.current = next.kind === "answered" ? next.answer : null;
          setStage(next);
        });
      },
      stop() {
        running.current?.abort();
        setStage((now) => (now.kind === "asking" ? { ...now, stopping: true } : now));
      },
      download() {
        if (last.current !== null) saveFile("answer.csv", "text/csv", askedCsv(last.current));
      },
    };
  }, [awake, ask]);

  const body = <AskLogs questions={askQuestions} tables={tables} state={{ sql, replaced, stage }} hands={hands} />;
  return awake ? <BodyProvider value={context}>{body}</BodyProvider> : body;
}
