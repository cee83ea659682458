import { JSDOM } from "jsdom";

/** The site's root as the pages are served: `/`, or the folder that the site is put in, with a closing slash. */
const base = import.meta.env.BASE_URL.endsWith("/") ? import.meta.env.BASE_URL : `${import.meta.env.BASE_URL}/`;

/** The address of a page of the site, given its path from the root. */
export const hrefTo = (path: string): string => `${base}${path}`;

/** The one document that figures are drawn with while the site is built. */
export const drawingDocument: Document = new JSDOM("").window.document;
