/** An address with one more choice in its query, whether or not it carries some already. */
export function withQuery(href: string, name: string, value: string): string {
  return `${href}${href.includes("?") ? "&" : "?"}${name}=${encodeURIComponent(value)}`;
}

/** An address without any choice: the whole of the logs. */
export const withoutQuery = (href: string): string => href.split("?")[0] ?? href;
