import { varietyPath } from "../../units/varietyPath.ts";
import { useBody } from "../context.ts";

/** A variety's name, which leads to its page. */
export function VarietyLink({ variety }: { readonly variety: string }) {
  const { hrefTo } = useBody();
  return <a href={hrefTo(varietyPath(variety))}>{variety}</a>;
}
