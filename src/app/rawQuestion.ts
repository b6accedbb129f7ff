import { computed, signal } from '@preact/signals';
import type { RawLayout } from '../core/film';
import type { GreyFrame } from '../core/frame';
import { fitRaw, frameBytes } from '../core/rawLayout';
import type { FootageFile } from '../footage/source';
import type { FilmApi } from '../protocol/film';

/** A file without a header, and its layout as stated so far. */
export interface AskedRaw {
  readonly file: FootageFile;
  readonly layout: RawLayout;
}

const FIRST_LAYOUT: RawLayout = {
  ...{ width: 640, height: 480, bits: 8, byteOrder: 'little', skip: 0, gap: 0 },
};

/** How a file's bytes lie, asked of a person. What was stated last is what is offered next. */
export function createRawQuestion(preview: FilmApi['preview']) {
  const asked = signal<AskedRaw | null>(null);
  let last = FIRST_LAYOUT;
  return {
    asked,
    /** Frames the layout makes of the file, the bytes it leaves over, and those of one frame. */
    fit: computed(() => {
      const now = asked.value;
      if (now === null) return null;
      return { ...fitRaw(now.file.blob.size, now.layout), frame: frameBytes(now.layout) };
    }),
    ask(file: FootageFile) {
      asked.value = { file, layout: last };
    },
    state(part: Partial<RawLayout>) {
      const now = asked.value;
      if (now === null) return;
      last = { ...now.layout, ...part };
      asked.value = { ...now, layout: last };
    },
    put() {
      asked.value = null;
    },
    /** A frame as the layout has it. Throws the reason where there is none. */
    frame: ({ file, layout }: AskedRaw, index: number): Promise<GreyFrame> =>
      preview(file, layout, index),
  };
}
