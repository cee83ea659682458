/** The name of a kiln or a load as part of a figure's id: letters, digits and hyphens, all else a low line. */
export const nameInId = (name: string): string => name.replace(/[^A-Za-z0-9-]/g, "_");
