import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';
import { codecWords, containerWords, modelWords } from '../text/names';
import { showCount, showNumber } from '../text/show';
import { t } from '../text/text';
import type { Fact, ReportSubject } from './subject';

const footagePath = ({ footage }: Shot): string => {
  if ('path' in footage) return footage.path;
  return t('report.document.pathAndMore', {
    path: footage.paths[0] ?? '',
    more: `${footage.paths.length - 1}`,
  });
};

/** Where the result comes from, a fact a line. */
export function provenance({ result, shot, footage, madeOn }: ReportSubject): readonly Fact[] {
  const { container, codec, width, height, frameCount, bitDepth, decoder } = footage;
  return [
    { name: t('report.document.fact.software'), text: `exitframe ${result.software}` },
    { name: t('report.document.fact.madeOn'), text: madeOn },
    { name: t('report.document.fact.footage'), text: footagePath(shot) },
    {
      name: t('report.document.fact.sha256'),
      text: result.footageSha256 ?? t('report.document.notWorkedOut'),
    },
    {
      name: t('report.document.fact.film'),
      text: t('report.document.filmIs', {
        container: containerWords(container),
        codec: codecWords(codec),
        width: `${width}`,
        height: `${height}`,
        bits: `${bitDepth}`,
        frames: showCount(frameCount),
      }),
    },
    { name: t('report.document.fact.decoder'), text: decoder.name },
    {
      name: t('report.document.fact.scale'),
      text: t('report.document.scaleIs', {
        value: showNumber(result.scale.value * 1000, 6),
        u: showNumber(result.scale.u * 1000, 2),
      }),
    },
    { name: t('report.settings.seed'), text: String(shot.seed) },
    { name: t('report.document.fact.shotVersion'), text: String(shot.version) },
  ];
}

/** How to come to it again, in a sentence or two. */
export const redoBriefly = ({ software, footageSha256, fit }: Result, shot: Shot): string =>
  t('report.document.redoBriefly', {
    software,
    path: footagePath(shot),
    sha256: footageSha256 ?? t('report.document.notWorkedOut'),
    seed: `${shot.seed}`,
    known: 'model' in fit ? 'yes' : 'no',
    model: 'model' in fit ? modelWords(fit.model) : '',
  });

/** The same where the shot file stands below. */
export const redo = (shot: Shot): string => t('report.document.redo', { path: footagePath(shot) });
