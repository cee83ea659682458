import { ENGINE_CACHE } from "./engineFiles.ts";

/** Bytes so far and bytes to come; `total` is 0 where the server does not say. */
export type OnProgress = (received: number, total: number) => void;

const startsWith = (bytes: Uint8Array, magic: readonly number[]): boolean =>
  magic.every((byte, at) => bytes[at] === byte);
const isGzip = (bytes: Uint8Array): boolean => startsWith(bytes, [0x1f, 0x8b]);
const isModule = (bytes: Uint8Array): boolean => startsWith(bytes, [0x00, 0x61, 0x73, 0x6d]);

/** Null where there is no Cache Storage: on plain http away from this machine, or where the reader forbids it. */
async function openCache(): Promise<Cache | null> {
  try {
    return await caches.open(ENGINE_CACHE);
  } catch {
    return null;
  }
}

/** Gathers a body, telling how far it has come. A server that unpacks on the way sends more than it said. */
async function gather(response: Response, onProgress: OnProgress): Promise<Uint8Array<ArrayBuffer>> {
  if (!response.body) return new Uint8Array(await response.arrayBuffer());
  const said = Number(response.headers.get("content-length") ?? 0);
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let received = 0;
  for await (const part of chunks(response.body)) {
    parts.push(part);
    received += part.length;
    onProgress(received, received > said ? 0 : said);
  }
  const whole = new Uint8Array(received);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Streams cannot be iterated directly in every browser that can run the engine. */
async function* chunks(body: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const reader = body.getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
}

async function unpack(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer> | null> {
  if (!isGzip(bytes)) return isModule(bytes) ? bytes : null;
  try {
    const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    const module = new Uint8Array(await new Response(unpacked).arrayBuffer());
    return isModule(module) ? module : null;
  } catch {
    return null;
  }
}

/**
 * The engine's module, from this browser's own store or from the site, unpacked. Whether it comes gzipped is read from
 * its first bytes, since some servers unpack what they send and some do not.
 *
 * @param address absolute, on the site's own origin
 * @throws {Error} when the site does not have it, or what came is not a module; the signal's reason when aborted
 */
export async function fetchEngine(
  address: string,
  onProgress: OnProgress,
  signal: AbortSignal | undefined,
): Promise<Blob> {
  const asModule = (bytes: Uint8Array<ArrayBuffer>): Blob => new Blob([bytes], { type: "application/wasm" });
  const cache = await openCache();
  const kept = await cache?.match(address).catch(() => undefined);
  if (kept) {
    const bytes = new Uint8Array(await kept.arrayBuffer());
    const module = await unpack(bytes);
    signal?.throwIfAborted();
    if (module) {
      onProgress(bytes.length, bytes.length);
      return asModule(module);
    }
  }
  const response = await fetch(address, signal ? { signal } : {});
  if (!response.ok) throw new Error(`The engine could not be fetched: ${address} answered ${response.status}.`);
  const bytes = await gather(response, onProgress);
  const module = await unpack(bytes);
  if (!module) throw new Error(`The engine could not be unpacked: what ${address} sent is not what was shipped.`);
  if (cache) await keep(cache, address, bytes);
  return asModule(module);
}

/** Keeps this version and lets older ones go. A full disk is no reason not to start. */
async function keep(cache: Cache, address: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
  try {
    for (const old of await cache.keys()) if (old.url !== address) await cache.delete(old);
    await cache.put(address, new Response(bytes, { headers: { "content-type": "application/octet-stream" } }));
  } catch {
    // The engine is fetched again next time.
  }
}
