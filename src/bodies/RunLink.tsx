import { runPath } from "../units/runPath.ts";
import { useBody } from "./context.ts";

/** A run's number, which leads to the run. */
export function RunLink({ run }: { readonly run: string }) {
  const { hrefTo } = useBody();
  return <a href={hrefTo(runPath(run))}>{run}</a>;
}

/** All runs of a load, one after another. */
export function RunLinks({ runs }: { readonly runs: readonly string[] }) {
  return (
    <>
      {runs.map((run, i) => (
        <>
          {i > 0 ? ", " : null}
          <RunLink run={run} />
        </>
      ))}
    </>
  );
}
