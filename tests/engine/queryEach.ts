/**
 * Runs each statement given as an argument and prints, a line each, what came of it. lockdown.test.ts starts it as a
 * child process, since some statements that reach for an extension never come back.
 */
import { openNodeDatabase } from "../../src/engine/node.ts";

const csv = new TextEncoder().encode("a\n1\n");
const database = await openNodeDatabase([{ name: "kept", columns: { a: "INTEGER" }, csv }]);
for (const sql of process.argv.slice(2)) {
  const outcome = await database.query(sql).then(
    (rows) => ({ answered: rows }),
    (error: unknown) => ({ refused: String(error) }),
  );
  console.log(JSON.stringify(outcome));
}
process.exit(0);
