import type { FigureFile } from "./figureSvg.ts";

/** Pixels to a CSS pixel: sharp on paper and on a fine screen. */
const SCALE = 2;

/** A figure's file as a picture. @throws {Error} with a sentence where this browser cannot paint it */
export async function figurePng({ markup, width, height }: FigureFile): Promise<Blob> {
  const picture = new Image();
  picture.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(markup)}`;
  await picture.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * SCALE;
  canvas.height = height * SCALE;
  const pen = canvas.getContext("2d");
  if (pen === null) throw new Error("This browser cannot paint a picture; save the figure as SVG.");
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob === null) reject(new Error("This browser cannot write a picture; save the figure as SVG."));
      else resolve(blob);
    }, "image/png");
  });
}
