let face: Promise<string | null> | null = null;

const asAddress = (blob: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });

async function fetchFace(): Promise<string | null> {
  const link = document.querySelector<HTMLLinkElement>('link[rel="preload"][as="font"][href*="sans"]');
  if (link === null) return null;
  const response = await fetch(link.href);
  return response.ok ? asAddress(new Blob([await response.arrayBuffer()], { type: "font/woff2" })) : null;
}

/** The site's face for drawings as a `data:` address; null where it cannot be had. Fetched once, mostly from the cache. */
export function siteFace(): Promise<string | null> {
  face ??= fetchFace().catch(() => null);
  return face;
}
