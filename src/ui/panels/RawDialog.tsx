import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { AskedRaw } from '../../app/rawQuestion';
import type { RawLayout } from '../../core/film';
import { formatCount } from '../../core/format';
import type { GreyFrame } from '../../core/frame';
import { type Reason, reasonOf } from '../../core/reason';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { paintFrame } from '../film/picture';
import { ReasonText } from '../shell/Notices';

const DEPTHS = [
  { value: '8', label: '8 bits, one byte' },
  { value: '10', label: '10 bits in two bytes' },
  { value: '12', label: '12 bits in two bytes' },
  { value: '16', label: '16 bits, two bytes' },
] as const;

const ORDERS = [
  { value: 'little', label: 'low byte first' },
  { value: 'big', label: 'high byte first' },
] as const;

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
        <h2 id="raw-title">Pixels without a header</h2>
        <p class="muted">
          Nothing in <strong>{now.file.name}</strong> ({formatCount(now.file.blob.size)} bytes) says
          how its pixels lie. State it as the camera’s settings or its software do: grey values, row
          by row, one frame after the other.
        </p>
        <LayoutFields layout={now.layout} />
        <FitWords now={now} />
        <Preview now={now} />
        <div class="row">
          <button type="submit" class="primary" disabled={!fits}>
            Open it so
          </button>
          <button type="button" class="plain" onClick={() => rawQuestion.put()}>
            Do not open it
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
      {number('Width, pixels', 'width', RULES.side)}
      {number('Height, pixels', 'height', RULES.side)}
      <ChoiceField
        label="Grey values"
        value={`${layout.bits}`}
        choices={DEPTHS}
        onChange={(bits) => rawQuestion.state({ bits: Number(bits) as RawLayout['bits'] })}
      />
      {layout.bits > 8 && (
        <ChoiceField
          label="Byte order"
          value={layout.byteOrder}
          choices={ORDERS}
          onChange={(byteOrder) => rawQuestion.state({ byteOrder })}
        />
      )}
      {number('Bytes before the first frame', 'skip', RULES.bytes)}
      {number('Bytes between frames', 'gap', RULES.bytes)}
    </div>
  );
}

/** Whether whole frames fill the file. */
function FitWords({ now }: { readonly now: AskedRaw }) {
  const fit = useDesk().session.rawQuestion.fit.value;
  if (fit === null) return null;
  const { count, left, frame } = fit;
  const fits = left === 0 && count >= 2;
  const words =
    count === 0
      ? `A frame would have ${formatCount(frame)} bytes, more than the file holds.`
      : left > 0
        ? `${formatCount(count)} frames of ${formatCount(frame)} bytes leave ${formatCount(left)} bytes over.`
        : count === 1
          ? 'One frame fills the file; a film has two at least.'
          : `${formatCount(count)} frames of ${formatCount(frame)} bytes fill the file.`;
  return (
    <p role="status" class={fits ? 'raw-fits' : 'raw-misfits'} data-file={now.file.name}>
      {fits ? 'It fits: ' : 'It does not fit yet: '}
      {words}
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
  if (!fits) return <p class="muted">A frame is shown here once whole frames fill the file.</p>;
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
          Frame {at} of {formatCount(count)}
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
  return <canvas ref={canvas} role="img" aria-label={`Frame ${frame.index} as stated`} />;
}
