import { type EncodedPacket, EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import { ExitframeError } from '../../core/reason';
import { type Timeline, timelineOf } from '../timeline';
import { unreadable } from '../unreadable';

/** Display index of a packet that is decoded but not shown. */
const HIDDEN = -1;

/** Packets of a film in decode order, each with the place of its frame in display order. */
export class PacketFeed {
  readonly timeline: Timeline;
  private readonly name: string;
  private readonly sink: EncodedPacketSink;
  /** Display index by packet number, in decode order. */
  private readonly displayed: Map<number, number>;

  private constructor(
    name: string,
    sink: EncodedPacketSink,
    timeline: Timeline,
    displayed: Map<number, number>,
  ) {
    this.name = name;
    this.sink = sink;
    this.timeline = timeline;
    this.displayed = displayed;
  }

  /** Lists a track's packets without reading their data. */
  static async of(name: string, track: InputVideoTrack, signal?: AbortSignal): Promise<PacketFeed> {
    const sink = new EncodedPacketSink(track);
    const ticksPerSecond = await track.getTimeResolution();
    const listed: { number: number; time: number; key: boolean }[] = [];
    const displayed = new Map<number, number>();
    for await (const packet of sink.packets(undefined, undefined, { metadataOnly: true })) {
      signal?.throwIfAborted();
      const number = packet.sequenceNumber;
      displayed.set(number, HIDDEN);
      // Before time 0: cut off by an edit list.
      const time = Math.round(packet.timestamp * ticksPerSecond);
      if (time >= 0) listed.push({ number, time, key: packet.type === 'key' });
    }
    listed.sort((a, b) => a.time - b.time);
    listed.forEach(({ number }, index) => {
      displayed.set(number, index);
    });
    return new PacketFeed(name, sink, timelineOf(listed, ticksPerSecond), displayed);
  }

  /** The packet to start decoding at for a frame: the last key packet shown no later than it. */
  async startFor(index: number): Promise<EncodedPacket> {
    const { ticks, ticksPerSecond } = this.timeline;
    const seconds = (ticks[index] as number) / ticksPerSecond;
    const verified = { verifyKeyPackets: true }; // the container's own marks may be wrong
    const packet = await this.reading(
      async () =>
        (await this.sink.getKeyPacket(seconds, verified)) ??
        (await this.sink.getFirstKeyPacket(verified)),
    );
    if (packet !== null) return packet;
    throw new ExitframeError(
      'undecodable',
      'The film has no frame a decoder could start at.',
      'Copy the clip from the camera again.',
      { values: { form: 'noStart' } },
    );
  }

  next(packet: EncodedPacket): Promise<EncodedPacket | null> {
    return this.reading(() => this.sink.getNextPacket(packet));
  }

  /** Display index of a packet's frame; negative: not shown. */
  indexOf(packet: EncodedPacket): number {
    return this.displayed.get(packet.sequenceNumber) ?? HIDDEN;
  }

  /** Number of the packet decoded last among those of the frames from `first` to `last`. */
  lastNumber(first: number, last: number): number {
    let number = -1;
    for (const [packet, index] of this.displayed) {
      if (index >= first && index <= last) number = Math.max(number, packet);
    }
    return number;
  }

  private async reading<T>(read: () => Promise<T>): Promise<T> {
    try {
      return await read();
    } catch (error) {
      throw unreadable(this.name, error);
    }
  }
}
