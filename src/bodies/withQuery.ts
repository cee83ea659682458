/** An address with one more choice in its query, whether or not it carries some already. */
export function withQuery(href: string, name: string, value: string): string {
  return `${href}${href.includes("?") ? "&" : "?"}${name}=${encodeURIComponent(value)}`;
}

/** What a query says of which page it is, and not of what the reader chose on it. */
const NAMES_PAGE = /^(run|of|month)=/;

/** An address without any choice: the whole of the logs. */
export function withoutQuery(href: string): string {
  const [path = "", query = ""] = href.split("?");
  const named = query.split("&").filter((pair) => NAMES_PAGE.test(pair));
  return named.length === 0 ? path : `${path}?${named.join("&")}`;
}
