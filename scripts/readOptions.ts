import { type ParseArgsConfig, parseArgs } from "node:util";

/**
 * What stands after a command. Asked for help, or given what it does not know, it prints how the command is used and ends:
 * with 0 for help, with 2 for a slip.
 *
 * @param usage a line or more that name every option
 */
export function readOptions<const Options extends NonNullable<ParseArgsConfig["options"]>>(
  usage: string,
  options: Options,
) {
  const words = process.argv.slice(2);
  if (words.includes("--help")) {
    console.log(usage);
    process.exit(0);
  }
  try {
    return parseArgs({ args: words, options }).values;
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n\n${usage}`);
    process.exit(2);
  }
}
