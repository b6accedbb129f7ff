import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Mistake, type MistakePicture, mistakes, pictureUrl } from '../../app/mistakes';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { SizeTable } from './SizeTable';
import { whatWords } from './words';

const headingId = (name: string) => `mistake-${name}`;

/** Usual mistakes, each with pictures of rendered clips and the size of the error it made there. */
export function MistakesView() {
  const desk = useDesk();
  const title = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => {
    const name = desk.mistake.value;
    if (name !== null) goTo(name);
    else title.current?.focus();
  }, [desk]);
  return (
    <main class="mistakes evidence stack" aria-labelledby="mistakes-title">
      <h2 id="mistakes-title" ref={title} tabIndex={-1}>
        {t('mistakes.title')}
      </h2>
      <p>{t('mistakes.what')}</p>
      <div class="row">
        <button
          type="button"
          onClick={() => {
            desk.place.value = 'shot';
          }}
        >
          {t('mistakes.back')}
        </button>
      </div>
      <nav aria-label={t('mistakes.list')}>
        <ul class="mistake-list">
          {mistakes.map(({ name }) => (
            <li key={name}>
              <button type="button" class="plain" onClick={() => goTo(name)}>
                {t(`mistakes.${name}.title`)}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      {mistakes.map((one) => (
        <OneMistake key={one.name} mistake={one} />
      ))}
    </main>
  );
}

function goTo(name: string): void {
  const heading = document.getElementById(headingId(name));
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

function OneMistake({ mistake }: { readonly mistake: Mistake }) {
  const { name, wrong, pictures, of } = mistake;
  const id = headingId(name);
  return (
    <section class="mistake stack" aria-labelledby={id}>
      <h3 id={id} tabIndex={-1}>
        {t(`mistakes.${name}.title`)}
      </h3>
      <p>{whatWords(mistake)}</p>
      <div class="mistake-pictures">
        {pictures.map((one) => (
          <Picture key={one.file} mistake={mistake} picture={one} />
        ))}
      </div>
      <SizeTable mistake={mistake} />
      <p class="muted">
        {t('mistakes.formula')}: {t(`mistakes.${name}.formula`)}. {t('mistakes.source')}{' '}
        {of === 'centreU' && t('mistakes.blurLimit')}
      </p>
      {wrong.warnings.length === 0 ? (
        <p>{t('mistakes.notWarned')}</p>
      ) : (
        <>
          <p>{t('mistakes.warned')}</p>
          {wrong.warnings.map((one) => (
            <div key={one.code} class="notice notice-warning" data-code={one.code}>
              <ReasonText reason={one} />
            </div>
          ))}
        </>
      )}
      <p>
        <strong>{t('mistakes.avoid')}</strong> {t(`mistakes.${name}.avoid`)}
      </p>
    </section>
  );
}

function Picture(props: { readonly mistake: Mistake; readonly picture: MistakePicture }) {
  const { mistake, picture } = props;
  const { width, height, lines, shows } = picture;
  const caption = captionOf(mistake, picture);
  return (
    <figure class="mistake-picture">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={caption}>
        <image href={pictureUrl(picture)} width={width} height={height} />
        {lines.map(({ x, is }) => (
          <g key={is} class={`mistake-line mistake-line-${is}`}>
            <line x1={x} x2={x} y1={0} y2={height} />
            <text x={x + 5} y={is === 'muzzle' ? 14 : height - 6}>
              {t(`mistakes.lines.${is}`)}
            </text>
          </g>
        ))}
      </svg>
      <figcaption>
        {shows !== 'both' && <strong>{t(`mistakes.${shows}`)}. </strong>}
        {caption} <span class="tag">{t('mistakes.rendered')}</span>
      </figcaption>
    </figure>
  );
}

function captionOf({ name }: Mistake, { shows }: MistakePicture): string {
  if (name === 'wrongRate') return t('mistakes.wrongRate.both');
  return t(`mistakes.${name}.${shows === 'wrong' ? 'wrong' : 'right'}`);
}
