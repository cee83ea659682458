import type { ComponentChildren } from "preact";
import { Later } from "./Later.tsx";

/** Some screens of a phone, one of a desk. */
const GROUP = 25;

interface RowGroupsProps<Row> {
  /** The table's own name within its page. */
  readonly id: string;
  readonly rows: readonly Row[];
  /** Draws one as a `tr`, with a key. */
  readonly row: (row: Row) => ComponentChildren;
}

function Group<Row>({ rows, row }: Omit<RowGroupsProps<Row>, "id">) {
  return <>{rows.map(row)}</>;
}

/** The body of a long table, in groups of rows that are each drawn by themselves: those that nobody sees can wait. */
export function RowGroups<Row>({ id, rows, row }: RowGroupsProps<Row>) {
  const starts = Array.from({ length: Math.ceil(rows.length / GROUP) }, (_, i) => i * GROUP);
  return (
    <>
      {starts.map((start) => {
        const name = `${id}-${start}`;
        return (
          <tbody key={start} data-rows={name}>
            <Later place={`rows ${name}`}>
              <Group rows={rows.slice(start, start + GROUP)} row={row} />
            </Later>
          </tbody>
        );
      })}
    </>
  );
}
