/** Relative luminance of a `#rrggbb` colour (WCAG 2.2, definition of relative luminance). */
function luminance(hex: string): number {
  const found = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (found === null) throw new RangeError(`luminance requires #rrggbb; got ${hex}`);
  const [red = 0, green = 0, blue = 0] = found.slice(1).map((part) => {
    const channel = Number.parseInt(part, 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two `#rrggbb` colours, 1 to 21 (WCAG 2.2, definition of contrast ratio). */
export function contrast(one: string, other: string): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}
