import { allRules } from "../analysis/controlCharts/ruleChoice.ts";
import { usualRules, type View, type WhatIfText, whatIfFields } from "../report/view.ts";

const isWhatIf = (name: string): name is keyof WhatIfText => (whatIfFields as readonly string[]).includes(name);

/** A control as the page has it, reduced to what a view needs to know. */
export interface Control {
  /** `data-control`: the name that its choice has in the address. */
  readonly name: string;
  readonly value: string;
  /** For tick boxes; true otherwise. */
  readonly checked: boolean;
}

/** The view after a reader has used one control. An emptied control goes back to its default. */
export function changeView(view: View, { name, value, checked }: Control): View {
  const text = value.trim() === "" ? null : value.trim();
  // What is being typed stays as it is, blanks and all: a field that rewrites itself under the fingers is no field.
  if (isWhatIf(name)) return { ...view, whatIf: { ...view.whatIf, [name]: value } };
  switch (name) {
    case "without": {
      const others = view.without.filter((run) => run !== value);
      return { ...view, without: checked && text !== null ? [...others, value].sort() : others };
    }
    case "from":
    case "to":
    case "variety":
    case "kiln":
    case "firing":
    case "sort":
      return { ...view, [name]: text };
    // Another measure has other differences: what was typed for the last one does not go along.
    case "measure":
      return { ...view, trial: { measure: text, difference: null } };
    case "difference":
      return { ...view, trial: { ...view.trial, difference: value === "" ? null : value } };
    case "search":
      return { ...view, search: value === "" ? null : value };
    case "rules": {
      const others = (view.rules ?? usualRules).filter((rule) => rule !== value);
      const asked = allRules.filter((rule) => others.includes(rule) || (checked && rule === value));
      // Without any rule there is no chart to speak of: the usual pair comes back.
      return { ...view, rules: asked.length === 0 || String(asked) === String(usualRules) ? null : asked };
    }
    case "apart":
      return { ...view, apart: checked && value === "yes" };
    case "units":
      return { ...view, units: value === "metric" || value === "us" ? value : null };
    case "air":
      return { ...view, air: value === "at_loading" || value === "mean" ? value : null };
    default:
      throw new RangeError(`no control is named ${name}`);
  }
}
