import { ExitframeError } from '../../core/reason';

/** A drawing that stands alone: every colour and measure written out, no style sheet needed. */
export interface DrawnFigure {
  readonly text: string;
  /** CSS px. */
  readonly width: number;
  readonly height: number;
}

const SVG = 'http://www.w3.org/2000/svg';
/** Room around it, CSS px. */
const MARGIN = 12;
/** What makes a shape look as it does; a drawing program knows them as attributes. */
const LOOKS = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-opacity',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'stroke-linecap',
  'paint-order',
  'vector-effect',
  'opacity',
] as const;
const TEXT_LOOKS = ['font-family', 'font-size', 'font-weight', 'text-anchor'] as const;
const COLOURS: ReadonlySet<string> = new Set(['fill', 'stroke']);

/**
 * A figure of the page as one SVG: its charts where they stand, and titles, keys and numbers around them as text.
 * What is hidden, or only for the screen, is left out. On white and in the colours of the light page, whatever the
 * theme: it is made for paper.
 */
export function figureSvg(figure: HTMLElement): DrawnFigure {
  const { dataset } = document.documentElement;
  const theme = dataset.theme;
  // Nothing is painted before it is set back.
  dataset.theme = 'light';
  try {
    return drawn(figure);
  } finally {
    if (theme === undefined) delete dataset.theme;
    else dataset.theme = theme;
  }
}

function drawn(figure: HTMLElement): DrawnFigure {
  const box = figure.getBoundingClientRect();
  const width = Math.ceil(box.width) + 2 * MARGIN;
  const height = Math.ceil(box.height) + 2 * MARGIN;
  const root = element('svg', { xmlns: SVG, width, height, viewBox: `0 0 ${width} ${height}` });
  root.append(element('rect', { width: '100%', height: '100%', fill: '#ffffff' }));
  const colour = colourReader();
  const place: Place = (x, y) => [round(x - box.left + MARGIN), round(y - box.top + MARGIN)];
  const walk = (one: Element) => {
    if (one.matches('.hidden-text, .plot-reading, [data-screen-only]')) return;
    if (one instanceof SVGSVGElement) {
      root.append(placedDrawing(one, place, colour));
      return;
    }
    for (const child of one.childNodes) {
      if (child instanceof Text) root.append(...placedText(child, place, colour));
      else if (child instanceof Element) walk(child);
    }
  };
  walk(figure);
  return { text: new XMLSerializer().serializeToString(root), width, height };
}

type Place = (x: number, y: number) => readonly [number, number];
type Colour = (css: string) => string;

const round = (x: number) => Math.round(x * 100) / 100;

function write(into: SVGElement, attributes: Readonly<Record<string, string | number>>): void {
  for (const [name, value] of Object.entries(attributes)) into.setAttribute(name, String(value));
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const made = document.createElementNS(SVG, name) as SVGElement;
  write(made, attributes);
  return made;
}

function placedDrawing(original: SVGSVGElement, place: Place, colour: Colour): SVGSVGElement {
  const copy = original.cloneNode(true) as SVGSVGElement;
  const { left, top, width, height } = original.getBoundingClientRect();
  const originals = [original, ...original.querySelectorAll('*')];
  const copies = [copy, ...copy.querySelectorAll('*')];
  for (const [i, one] of originals.entries()) writeLooks(one, copies[i] as Element, colour);
  const [x, y] = place(left, top);
  write(copy, { x, y, width, height, overflow: getComputedStyle(original).overflow });
  return copy;
}

function writeLooks(original: Element, copy: Element, colour: Colour): void {
  const style = getComputedStyle(original);
  const isText = original instanceof SVGTextContentElement;
  const isShape = original instanceof SVGGeometryElement;
  if (isText || isShape) {
    for (const name of isText ? [...LOOKS, ...TEXT_LOOKS] : LOOKS) {
      const value = style.getPropertyValue(name);
      // A pattern is named within the drawing; the page writes it as an address.
      const own = copy.getAttribute(name);
      if (own?.startsWith('url(')) continue;
      copy.setAttribute(name, COLOURS.has(name) ? colour(value) : value);
    }
  }
  copy.removeAttribute('class');
  copy.removeAttribute('style');
}

/** A text of the page, one element a line it runs over. */
function placedText(node: Text, place: Place, colour: Colour): readonly SVGElement[] {
  const parent = node.parentElement;
  if (parent === null) return [];
  const style = getComputedStyle(parent);
  const size = Number.parseFloat(style.fontSize);
  return linesOf(node).map(({ text, left, bottom, height }) => {
    // The letters stand in the middle of their line; a fifth of their size hangs below the base line.
    const [x, y] = place(left, bottom - (height - size) / 2 - size / 5);
    const written = element('text', {
      ...{ x, y, fill: colour(style.color) },
      'font-family': style.fontFamily,
      'font-size': style.fontSize,
      'font-weight': style.fontWeight,
    });
    written.textContent = text;
    return written;
  });
}

interface TextLine {
  readonly text: string;
  readonly left: number;
  readonly bottom: number;
  readonly height: number;
}

function linesOf(node: Text): readonly TextLine[] {
  const lines: TextLine[] = [];
  const range = document.createRange();
  for (const match of node.data.matchAll(/\S+/g)) {
    range.setStart(node, match.index);
    range.setEnd(node, match.index + match[0].length);
    const { left, bottom, height } = range.getBoundingClientRect();
    const last = lines.at(-1);
    if (last !== undefined && Math.abs(last.bottom - bottom) < height / 2) {
      lines[lines.length - 1] = { ...last, text: `${last.text} ${match[0]}` };
    } else if (height > 0) {
      lines.push({ text: match[0], left, bottom, height });
    }
  }
  return lines;
}

/** Writes any CSS colour as '#rrggbb', which every drawing program reads; a page may name them in newer ways. */
function colourReader(): Colour {
  const context = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  const known = new Map<string, string>();
  return (css) => {
    if (css === 'none' || css.startsWith('url(') || context === null) return css;
    const before = known.get(css);
    if (before !== undefined) return before;
    context.fillStyle = css;
    context.fillRect(0, 0, 1, 1);
    const [red = 0, green = 0, blue = 0] = context.getImageData(0, 0, 1, 1).data;
    const hex = `#${[red, green, blue].map((one) => one.toString(16).padStart(2, '0')).join('')}`;
    known.set(css, hex);
    return hex;
  };
}

/** Pixels of a picture for one CSS px: sharp on paper. */
const PIXELS_EACH = 3;

/** The drawing as a PNG. Throws `pictureNotDrawn`. */
export async function pngOf({ text, width, height }: DrawnFigure): Promise<Blob> {
  const picture = new Image();
  picture.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await picture.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width * PIXELS_EACH;
  canvas.height = height * PIXELS_EACH;
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (blob !== null) return blob;
  throw new ExitframeError(
    'pictureNotDrawn',
    'The browser could not turn the figure into a picture.',
    'Save it as SVG instead.',
  );
}
