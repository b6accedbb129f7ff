import type { SpanDecoders } from '../platform';
import type { Span } from '../range';

/**
 * Frames of spans in order, each decoded by whichever of the decoders is free: while one span's frames are pulled the
 * next ones are under way, one a decoder. The decoders end with it, cancelled or not.
 */
export async function* decodeSideBySide(
  spans: readonly Span[],
  decoders: SpanDecoders,
  signal?: AbortSignal,
): AsyncGenerator<readonly [index: number, Uint8Array | Uint16Array]> {
  const end = () => decoders.end();
  signal?.addEventListener('abort', end, { once: true });
  try {
    const coming = spans.slice(0, decoders.count).map((span) => underWay(decoders, span));
    for (const [i, span] of spans.entries()) {
      signal?.throwIfAborted();
      const planes = await (coming.shift() as (typeof coming)[number]);
      const next = spans[i + decoders.count];
      if (next !== undefined) coming.push(underWay(decoders, next));
      for (const [k, index] of span.wanted.entries()) {
        signal?.throwIfAborted();
        yield [index, planes[k] as Uint8Array | Uint16Array];
      }
    }
  } finally {
    signal?.removeEventListener('abort', end);
    end();
  }
}

function underWay(decoders: SpanDecoders, span: Span): ReturnType<SpanDecoders['decode']> {
  const planes = decoders.decode(span);
  planes.catch(() => {}); // met by whoever waits for it; nobody may
  return planes;
}
