import { runFolder } from "./runPath.ts";

/**
 * The folder of a variety's page: the same letters that stay, and the same `~` with two hex digits for all others, as in
 * {@link runFolder}; two varieties never share a folder.
 *
 * @param variety as logged, not empty
 * @throws {RangeError} when `variety` is empty
 */
export const varietyFolder = (variety: string): string => runFolder(variety);

/** The variety's page, relative to the site's root: `varieties/Alva/`. */
export const varietyPath = (variety: string): string => `varieties/${varietyFolder(variety)}/`;
