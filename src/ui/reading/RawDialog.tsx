import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { AskedRaw } from '../../app/rawQuestion';
import type { RawLayout } from '../../core/film';
import type { GreyFrame } from '../../core/frame';
import { type Reason, reasonOf } from '../../core/reason';
import { showCount } from '../../text/show';
import { t, tRich } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { paintFrame } from '../film/picture';
import { ReasonText } from '../shell/Notices';

const DEPTHS = ['8', '10', '12', '16'] as const;
const ORDERS = ['little', 'big'] as const;

/** Asks how the pixels of a file without a header lie, and shows a frame read so. */
export function RawDialog() {
  const { asked } = useDesk().session.rawQuestion;
  const now = asked.value;
  return now === null ? null : <Question now={now} />;
}

function Question({ now }: { readonly now: AskedRaw }) {
  const { rawQuestion, openRaw } = useDesk().session;
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const shown = dialog.current;
    shown?.showModal();
    return () => shown?.close();
  }, []);
  const fit = rawQuestion.fit.value;
  const fits = fit !== null && fit.left === 0 && fit.count >= 2;
  return (
    <dialog
      ref={dialog}
      class="raw-dialog"
      aria-labelledby="raw-title"
      onCancel={() => rawQuestion.put()}
    >
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (fits) void openRaw();
        }}
      >
        <h2 id="raw-title">{t('reading.raw.title')}</h2>
        <p class="muted">
          {tRich('reading.raw.what', {
            name: now.file.name,
            bytes: showCount(now.file.blob.size),
          })}
        </p>
        <LayoutFields layout={now.layout} />
        <FitWords now={now} />
        <Preview now={now} />
        <div class="row">
          <button type="submit" class="primary" disabled={!fits}>
            {t('reading.raw.open')}
          </button>
          <button type="button" class="plain" onClick={() => rawQuestion.put()}>
            {t('reading.raw.leave')}
          </button>
        </div>
      </form>
    </dialog>
  );
}

function LayoutFields({ layout }: { readonly layout: RawLayout }) {
  const { rawQuestion } = useDesk().session;
  const number = (
    label: string,
    key: 'width' | 'height' | 'skip' | 'gap',
    rule: typeof RULES.side | typeof RULES.bytes,
  ) => (
    <QuantityField
      label={label}
      rule={rule}
      value={layout[key]}
      onCommit={(value) => value !== null && rawQuestion.state({ [key]: value })}
    />
  );
  return (
    <div class="raw-fields">
      {number(t('reading.raw.width'), 'width', RULES.side)}
      {number(t('reading.raw.height'), 'height', RULES.side)}
      <ChoiceField
        label={t('reading.raw.grey')}
        value={`${layout.bits}`}
        choices={DEPTHS.map((value) => ({ value, label: t(`reading.raw.bits.${value}`) }))}
        onChange={(bits) => rawQuestion.state({ bits: Number(bits) as RawLayout['bits'] })}
      />
      {layout.bits > 8 && (
        <ChoiceField
          label={t('reading.raw.byteOrder')}
          value={layout.byteOrder}
          choices={ORDERS.map((value) => ({ value, label: t(`reading.raw.order.${value}`) }))}
          onChange={(byteOrder) => rawQuestion.state({ byteOrder })}
        />
      )}
      {number(t('reading.raw.skip'), 'skip', RULES.bytes)}
      {number(t('reading.raw.gap'), 'gap', RULES.bytes)}
    </div>
  );
}

/** Whether whole frames fill the file. */
function FitWords({ now }: { readonly now: AskedRaw }) {
  const fit = useDesk().session.rawQuestion.fit.value;
  if (fit === null) return null;
  const { count, left } = fit;
  const frame = showCount(fit.frame);
  const fits = left === 0 && count >= 2;
  const words = () => {
    if (count === 0) return t('reading.raw.tooLarge', { frame });
    const shown = { count: showCount(count), frame };
    if (left > 0) return t('reading.raw.over', { ...shown, n: count, left: showCount(left) });
    return count === 1 ? t('reading.raw.single') : t('reading.raw.fits', shown);
  };
  return (
    <p role="status" class={fits ? 'raw-fits' : 'raw-misfits'} data-file={now.file.name}>
      {words()}
    </p>
  );
}

/** The first frame read so, with any problem of its values in its place. */
function Preview({ now }: { readonly now: AskedRaw }) {
  const { rawQuestion } = useDesk().session;
  const count = rawQuestion.fit.value?.count ?? 0;
  const fits = count >= 2 && rawQuestion.fit.value?.left === 0;
  const [index, setIndex] = useState(0);
  const [frame, setFrame] = useState<GreyFrame | null>(null);
  const [wrong, setWrong] = useState<Reason | null>(null);
  const at = Math.min(index, Math.max(count - 1, 0));
  useEffect(() => {
    let current = true;
    setFrame(null);
    setWrong(null);
    if (fits) {
      rawQuestion.frame(now, at).then(
        (read) => current && setFrame(read),
        (error) => current && setWrong(reasonOf(error)),
      );
    }
    return () => {
      current = false;
    };
  }, [now, at, fits]);
  if (!fits) return <p class="muted">{t('reading.raw.shownHere')}</p>;
  return (
    <figure class="raw-preview">
      {wrong !== null && (
        <div class="notice notice-problem" role="alert" data-code={wrong.code}>
          <ReasonText reason={wrong} />
        </div>
      )}
      {frame !== null && <Picture frame={frame} />}
      <figcaption>
        <label>
          {t('reading.raw.frameOf', { index: showCount(at), last: showCount(count - 1) })}
          <input
            type="range"
            min={0}
            max={count - 1}
            value={at}
            onInput={(event) => setIndex(Number(event.currentTarget.value))}
          />
        </label>
      </figcaption>
    </figure>
  );
}

function Picture({ frame }: { readonly frame: GreyFrame }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined) return;
    context.canvas.width = frame.width;
    context.canvas.height = frame.height;
    const image = context.createImageData(frame.width, frame.height);
    paintFrame(frame, { low: 0, high: frame.white }, image.data);
    context.putImageData(image, 0, 0);
  }, [frame]);
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={t('reading.raw.frameIs', { index: showCount(frame.index) })}
    />
  );
}
