import { JSDOM } from "jsdom";

/** The one document that figures are drawn with while the customers' pages are built. */
export const drawingDocument: Document = new JSDOM("").window.document;
