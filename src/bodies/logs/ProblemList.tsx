import type { Problem } from "../../tables/problem.ts";
import { Scroll } from "../Scroll.tsx";

const EFFECT: Readonly<Record<Problem["effect"], string>> = {
  "file-set-aside": "the file was not read",
  "row-set-aside": "the row was set aside",
  "value-blanked": "the value was left blank",
  note: "noted; nothing was taken away",
};

/** Faults with their place, what was found there, what became of it and how to mend it. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  const label = "Faults and notes";
  return (
    <Scroll label={label}>
      <table class="compact problems">
        <caption class="visually-hidden">{label}</caption>
        <thead>
          <tr>
            <th scope="col">line</th>
            <th scope="col">column</th>
            <th scope="col">found</th>
            <th scope="col">what is wrong, and how to mend it</th>
          </tr>
        </thead>
        <tbody>
          {problems.map(({ file, line, column, value, message, hint, effect }) => (
            <tr>
              <th scope="row" class="keep" title={file}>
                {line === null ? "whole file" : line}
              </th>
              <td>{column ?? ""}</td>
              <td>{value === null ? "" : <q>{value}</q>}</td>
              <td>
                {message} <span class="quiet">{hint}</span> <span class="effect">{`${EFFECT[effect]}.`}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
