/** Pieces as they come. Streams cannot be iterated directly in every browser that can run the engine. */
export async function* streamed(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
  } finally {
    await reader.cancel().catch(() => {});
  }
}
