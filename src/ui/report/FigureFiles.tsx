import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { fileNameOf, saveFile } from '../../app/saving';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { figureSvg, pngOf } from './figureSvg';

interface FigureFilesProps {
  /** Names the file. */
  readonly name: string;
  readonly children: ComponentChildren;
}

/** A figure that can be saved by itself, as it stands. */
export function FigureFiles({ name, children }: FigureFilesProps) {
  const { notices } = useDesk().session;
  const figure = useRef<HTMLDivElement>(null);
  const save = async (kind: 'svg' | 'png') => {
    if (figure.current === null) return;
    try {
      const drawn = figureSvg(figure.current);
      if (kind === 'svg') {
        await saveFile(
          `${fileNameOf(name)}.svg`,
          drawn.text,
          t('report.bar.kind.drawing'),
          'image/svg+xml',
        );
      } else {
        await saveFile(
          `${fileNameOf(name)}.png`,
          await pngOf(drawn),
          t('report.bar.kind.picture'),
          'image/png',
        );
      }
    } catch (error) {
      notices.report('result', error);
    }
  };
  return (
    <div class="report-figure">
      <div ref={figure} class="report-drawing">
        {children}
      </div>
      <div class="row report-figure-files" data-screen-only>
        <button type="button" class="plain" onClick={() => void save('svg')}>
          {t('report.bar.saveSvg')}
        </button>
        <button type="button" class="plain" onClick={() => void save('png')}>
          {t('report.bar.savePng')}
        </button>
      </div>
    </div>
  );
}
