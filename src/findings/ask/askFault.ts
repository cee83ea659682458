/** What went wrong with a question: a sentence for its asker, and the engine's own words where they say more. */
export interface AskFault {
  readonly sentence: string;
  readonly engine: string | null;
}

interface Known {
  readonly pattern: RegExp;
  readonly sentence: (found: RegExpExecArray, whole: string) => string;
}

const near = (whole: string): string => {
  const names = /Candidate bindings: ([^\n]+)/.exec(whole)?.[1] ?? /Did you mean ("[^"]+")/.exec(whole)?.[1];
  return names === undefined ? "The tables and their columns stand below." : `Near it: ${names.replaceAll('"', "")}.`;
};

const KNOWN: readonly Known[] = [
  {
    pattern: /Table with name ([^\s!]+) does not exist/,
    sentence: ([, name], whole) => `There is no table called ${name}. ${near(whole)}`,
  },
  {
    pattern: /Referenced (?:column|table) "([^"]+)" not found/,
    sentence: ([, name], whole) => `No table named after FROM has a column ${name}. ${near(whole)}`,
  },
  {
    pattern: /column "?([^"\s]+)"? must appear in the GROUP BY/,
    sentence: ([, name]) =>
      `${name} has many values in each group: name it after GROUP BY as well, or ask for one of them, such as max(${name}).`,
  },
  {
    pattern: /Ambiguous reference to column name "([^"]+)"/,
    sentence: ([, name]) => `Several of the tables have a column ${name}: say which, as in run_rows.${name}.`,
  },
  {
    pattern: /syntax error at end of input/,
    sentence: () => "The question breaks off before it is finished.",
  },
  {
    pattern: /syntax error at or near \\?"([^"\\]+)\\?"/,
    sentence: ([, word]) =>
      `The question cannot be read from “${word}” on. Often a comma or a bracket before it is missing or too much; the columns "at", "on" and the table's "order" stand in quotation marks.`,
  },
  {
    pattern: /Scalar Function with name "?([^"\s]+)"? does not exist|Function with name "?([^"\s]+)"? does not exist/,
    sentence: ([, one, other], whole) => `There is no function called ${one ?? other}. ${near(whole)}`,
  },
  {
    pattern: /Cannot prepare multiple statements/,
    sentence: () => "Ask one question at a time: take out all but one, and the semicolon after it.",
  },
  {
    pattern: /read-only mode|CTE needs a SELECT/,
    sentence: () => "The logs can be read here and not changed.",
  },
  {
    pattern: /file system operations are disabled|Permission Error|Cannot change configuration/,
    sentence: () => "A question can read the tables below and nothing else: no files, no other host, no settings.",
  },
  {
    pattern: /Could not convert string '([^']*)' to (\w+)/,
    sentence: ([, text, type]) => `“${text}” cannot be read as ${type?.toLowerCase()}.`,
  },
  {
    pattern: /Conversion Error: ([^\n]*)/,
    sentence: ([, why]) => `A value cannot be converted: ${why}.`,
  },
  {
    pattern:
      /No function matches the given name and argument types '([^']+)'|Could not choose a best candidate function/,
    sentence: ([, call]) =>
      call === undefined
        ? "Text and numbers are mixed in one sum: cast one of them, as in column::DOUBLE."
        : `${call.split("(")[0]} does not take values of these types: ${call}.`,
  },
  {
    pattern: /Out of Memory|memory access out of bounds|failed to allocate/i,
    sentence: () => "The answer would not fit into this browser's memory: ask for fewer rows or columns.",
  },
  { pattern: /^cancelled$/, sentence: () => "Cancelled before the engine was ready." },
  { pattern: /^stopped$/, sentence: () => "Stopped. Nothing was changed." },
];

/** The engine hands some of its messages out as JSON. */
function words(message: string): string {
  try {
    const { exception_message: text } = JSON.parse(message) as { readonly exception_message?: unknown };
    return typeof text === "string" ? text : message;
  } catch {
    return message;
  }
}

/** Puts into plain words why a question was not answered. */
export function askFault(message: string): AskFault {
  const whole = words(message);
  for (const { pattern, sentence } of KNOWN) {
    const found = pattern.exec(whole);
    if (found === null) continue;
    const said = sentence(found, whole);
    return { sentence: said, engine: whole.includes(" ") ? whole : null };
  }
  // Our own refusals are sentences already.
  return /^[A-Z][^\n]*\.$/.test(whole) && !/ Error: /.test(whole)
    ? { sentence: whole, engine: null }
    : { sentence: "The engine could not answer this question.", engine: whole };
}
