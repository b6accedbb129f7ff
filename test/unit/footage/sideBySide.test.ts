import { describe, expect, it } from 'vitest';
import { decodeSideBySide } from '../../../src/footage/ffmpeg/sideBySide';
import type { SpanDecoders } from '../../../src/footage/platform';
import type { Span } from '../../../src/footage/range';

const spans: Span[] = [0, 3, 6, 9, 12].map((first) => ({
  first,
  last: first + 2,
  wanted: [first, first + 2],
}));

/** Decoders whose spans are done when the test says so; a frame's grey value is its index. */
function fakeDecoders(count: number) {
  const underWay: { span: Span; done(): void; fail(error: Error): void }[] = [];
  let most = 0;
  let ended = 0;
  const decoders: SpanDecoders = {
    count,
    decode: (span) =>
      new Promise((resolve, reject) => {
        const settle = (act: () => void) => {
          underWay.splice(
            underWay.findIndex((one) => one.span === span),
            1,
          );
          act();
        };
        underWay.push({
          span,
          done: () => settle(() => resolve(span.wanted.map((index) => Uint8Array.of(index)))),
          fail: (error) => settle(() => reject(error)),
        });
        most = Math.max(most, underWay.length);
      }),
    end() {
      ended++;
      for (const one of [...underWay]) one.fail(new DOMException('ended', 'AbortError'));
    },
  };
  return { decoders, underWay, most: () => most, ended: () => ended };
}

async function collect(
  fake: ReturnType<typeof fakeDecoders>,
  order: 'first' | 'last',
  signal?: AbortSignal,
) {
  const got: [number, number][] = [];
  const running = (async () => {
    for await (const [index, plane] of decodeSideBySide(spans, fake.decoders, signal)) {
      got.push([index, plane[0] as number]);
    }
  })();
  running.catch(() => {});
  const finish = async () => {
    while (fake.underWay.length > 0) {
      fake.underWay.at(order === 'first' ? 0 : -1)?.done();
      await new Promise((next) => setTimeout(next));
    }
  };
  return { got, running, finish };
}

describe('spans decoded side by side', () => {
  it.each(['first', 'last'] as const)('come in order, whichever is done %s', async (order) => {
    const fake = fakeDecoders(2);
    const { got, running, finish } = await collect(fake, order);
    await finish();
    await running;
    const indices = spans.flatMap(({ wanted }) => wanted);
    expect(got).toEqual(indices.map((index) => [index, index]));
    expect(fake.most()).toBe(2);
    expect(fake.ended()).toBe(1);
  });

  it('of more decoders than spans the rest stay idle', async () => {
    const fake = fakeDecoders(9);
    const { got, running, finish } = await collect(fake, 'last');
    await finish();
    await running;
    expect(got).toHaveLength(10);
    expect(fake.most()).toBe(5);
  });

  it('a failure is met where its span would come, and ends the decoders', async () => {
    const fake = fakeDecoders(2);
    const { got, running } = await collect(fake, 'first');
    fake.underWay[1]?.fail(new Error('span 3 to 5'));
    fake.underWay[0]?.done();
    await expect(running).rejects.toThrow('span 3 to 5');
    expect(got).toEqual([
      [0, 0],
      [2, 2],
    ]);
    expect(fake.ended()).toBe(1);
    expect(fake.underWay).toEqual([]);
  });

  it('cancelled it ends at once, not when a span is done', async () => {
    const fake = fakeDecoders(2);
    const abort = new AbortController();
    const { got, running } = await collect(fake, 'first', abort.signal);
    abort.abort();
    await expect(running).rejects.toMatchObject({ name: 'AbortError' });
    expect(got).toEqual([]);
    expect(fake.ended()).toBeGreaterThan(0);
  });
});
