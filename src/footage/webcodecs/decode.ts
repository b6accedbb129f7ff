import type { EncodedPacket } from 'mediabunny';
import { type Span, spansOf } from '../range';
import type { SpareMemory } from '../spareMemory';
import { LumaDecoder } from './decoder';
import type { PacketFeed } from './feed';
import type { Luma } from './luma';

interface IndexedLuma extends Luma {
  readonly index: number;
}

/** Luma of the wanted frames (ascending), decoded as they are pulled. */
export async function* decodeFrames(
  config: VideoDecoderConfig,
  feed: PacketFeed,
  wanted: readonly number[],
  memory: SpareMemory,
  signal?: AbortSignal,
): AsyncGenerator<IndexedLuma> {
  const decoder = new LumaDecoder(config, memory);
  try {
    for (const span of spansOf(wanted, feed.timeline.key, Number.POSITIVE_INFINITY)) {
      yield* decodeSpan(decoder, feed, span, signal);
    }
  } finally {
    decoder.close();
  }
}

async function* decodeSpan(
  decoder: LumaDecoder,
  feed: PacketFeed,
  span: Span,
  signal?: AbortSignal,
): AsyncGenerator<IndexedLuma> {
  await decoder.begin(span.wanted);
  const last = feed.lastNumber(span.first, span.last);
  let packet: EncodedPacket | null = await feed.startFor(span.first);
  for (const index of span.wanted) {
    let luma = await decoder.take(index);
    while (luma === null) {
      signal?.throwIfAborted();
      if (packet !== null && decoder.hasRoom) {
        decoder.feed(packet.data, packet.type, feed.indexOf(packet));
        packet = packet.sequenceNumber < last ? await feed.next(packet) : null;
        if (packet === null) decoder.finish();
      } else {
        await decoder.progress();
      }
      luma = await decoder.take(index);
    }
    signal?.throwIfAborted();
    yield { index, ...luma };
  }
}
