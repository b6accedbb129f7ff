import type { FieldOrder } from '../../core/film';
import { ExitframeError } from '../../core/reason';
import type { SyncReader } from '../reader';
import { quarterTurn, type Rotation } from '../rotate';
import { runCore, textOutput } from './core';

export interface VideoStream {
  /** Of the stream in the file. */
  readonly index: number;
  readonly codec: string;
  /** Four-letter tag in the container. */
  readonly tag: string;
  readonly width: number;
  readonly height: number;
  readonly pixelFormat: string;
  /** Pixel width over height, as coded. */
  readonly pixelAspect: number;
  readonly rotation: Rotation;
  /** Which field comes first where it is interlaced; null: it is not, or nothing says so. */
  readonly fields: FieldOrder | null;
  /** Whether it says that its grey values are of limited range. */
  readonly isLimited: boolean;
  /** Of its timestamps. */
  readonly ticksPerSecond: number;
  /** Frames the container says it holds, those hidden by an edit list included; 0: it does not say. */
  readonly statedFrames: number;
}

export interface SoundStream {
  readonly index: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly ticksPerSecond: number;
}

export interface Contents {
  /** ffmpeg's name of the container, possibly a list. */
  readonly format: string;
  /** First time of all streams, s: what ffmpeg counts a place to seek from. */
  readonly startTime: number;
  readonly video: VideoStream | null;
  readonly sound: SoundStream | null;
  /** What ffmpeg complained about. */
  readonly complaints: readonly string[];
}

export interface Packet {
  /** Presentation time in ticks; null: the container gives none. */
  readonly pts: number | null;
  readonly dts: number | null;
  readonly key: boolean;
}

interface RawStream {
  index: number;
  codec_type?: string;
  codec_name?: string;
  codec_tag_string?: string;
  width?: number;
  height?: number;
  pix_fmt?: string;
  field_order?: string;
  color_range?: string;
  sample_aspect_ratio?: string;
  time_base?: string;
  nb_frames?: string;
  channels?: number;
  sample_rate?: string;
  disposition?: { attached_pic?: number };
  side_data_list?: { rotation?: number }[];
}

interface RawContents {
  streams?: RawStream[];
  format?: { format_name?: string; start_time?: string };
}

/** "16:9" or "1/25" as a number; null where it says nothing. */
function ratio(text: string | undefined): number | null {
  const [above = 0, below = 0] = (text ?? '').split(/[:/]/).map(Number);
  return above > 0 && below > 0 ? above / below : null;
}

/** ffmpeg's two letters: the field that is first in time, then how both lie in the file. */
const FIELD_ORDERS: Readonly<Record<string, FieldOrder>> = {
  ...{ tt: 'topFirst', tb: 'topFirst' },
  ...{ bb: 'bottomFirst', bt: 'bottomFirst' },
};

function videoStream(raw: RawStream): VideoStream {
  const rotation = raw.side_data_list?.find((data) => data.rotation !== undefined)?.rotation ?? 0;
  return {
    index: raw.index,
    codec: raw.codec_name ?? 'unknown',
    tag: raw.codec_tag_string ?? '',
    width: raw.width ?? 0,
    height: raw.height ?? 0,
    pixelFormat: raw.pix_fmt ?? 'unknown',
    pixelAspect: ratio(raw.sample_aspect_ratio) ?? 1,
    rotation: quarterTurn(-rotation), // ffmpeg counts anticlockwise
    fields: FIELD_ORDERS[raw.field_order ?? ''] ?? null,
    isLimited: raw.color_range === 'tv',
    ticksPerSecond: ratio(raw.time_base?.split('/').reverse().join('/')) ?? 1,
    statedFrames: Number(raw.nb_frames ?? 0),
  };
}

const soundStream = (raw: RawStream): SoundStream => ({
  index: raw.index,
  channels: raw.channels ?? 1,
  sampleRate: Number(raw.sample_rate ?? 0),
  ticksPerSecond: ratio(raw.time_base?.split('/').reverse().join('/')) ?? 1,
});

/** What a file holds, by its header. Throws `notFootage` where it is no film or sound at all. */
export async function probeContents(
  module: WebAssembly.Module,
  name: string,
  reader: SyncReader,
): Promise<Contents> {
  const output = textOutput();
  const { log } = await runCore(module, {
    program: 'ffprobe',
    args: [
      '-v',
      'error',
      '-show_streams',
      '-show_format',
      '-of',
      'json',
      '-o',
      '/out/json',
      '/in/clip',
    ],
    inputs: { clip: reader },
    outputs: { json: output.take },
  });
  const { streams = [], format } = JSON.parse(output.text() || '{}') as RawContents;
  if (format?.format_name === undefined || streams.length === 0) {
    throw new ExitframeError(
      'notFootage',
      `"${name}" is not a video: ${log.at(-1) ?? 'no known format was found in it'}.`,
      'Choose the clip as the camera saved it.',
      { values: { form: 'clip', name, why: log.at(-1) ?? '' } },
    );
  }
  // The cover picture of a piece of music is no film.
  const video = streams.find(
    (raw) => raw.codec_type === 'video' && raw.disposition?.attached_pic !== 1,
  );
  const sound = streams.find((raw) => raw.codec_type === 'audio');
  return {
    format: format.format_name,
    startTime: Number(format.start_time ?? 0) || 0,
    video: video === undefined ? null : videoStream(video),
    sound: sound === undefined ? null : soundStream(sound),
    complaints: log,
  };
}

const ticks = (text: string | undefined): number | null =>
  text === undefined || text === 'N/A' || text === '' ? null : Number(text);

export interface PacketList {
  /** Those with a frame that is shown, in decode order. */
  readonly packets: readonly Packet[];
  /** Number of all packets. */
  readonly total: number;
  /** What ffmpeg complained about. */
  readonly complaints: readonly string[];
}

/** The packets of a stream, without decoding them. */
export async function listPackets(
  module: WebAssembly.Module,
  reader: SyncReader,
  stream: number,
): Promise<PacketList> {
  const output = textOutput();
  const entries = 'packet=pts,dts,size,flags';
  const { log } = await runCore(module, {
    program: 'ffprobe',
    args: ['-v', 'error', '-select_streams', `${stream}`, '-show_entries', entries].concat([
      '-of',
      'csv=p=0',
      '-o',
      '/out/packets',
      '/in/clip',
    ]),
    inputs: { clip: reader },
    outputs: { packets: output.take },
  });
  const packets: Packet[] = [];
  const lines = output
    .text()
    .split('\n')
    .filter((line) => line !== '');
  for (const line of lines) {
    const [pts, dts, size, flags = ''] = line.split(',');
    // D: cut off by an edit list, decoded but not shown. Nothing in it: the frame before stays.
    if (flags.includes('D') || size === '0') continue;
    packets.push({
      pts: ticks(pts),
      dts: ticks(dts),
      key: flags.startsWith('K'),
    });
  }
  return { packets, total: lines.length, complaints: log };
}
