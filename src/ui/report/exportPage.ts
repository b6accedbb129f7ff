import plots from '../../plots/plots.css?inline';
import base from '../base.css?inline';
import results from '../result/result.css?inline';
import tokens from '../tokens.css?inline';
import report from './report.css?inline';

const STYLES = [tokens, base, plots, results, report].join('\n');

/** Nothing but what the page holds itself may be shown or run. */
const POLICY =
  "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/**
 * A report as one file that needs nothing else: markup, drawings and pictures as they stand, styles included. The
 * browser writes out the markup, and so escapes every text in it.
 */
export function pageOf(sheet: HTMLElement, title: string): string {
  const page = document.implementation.createHTMLDocument(title);
  page.documentElement.lang = document.documentElement.lang || 'en';
  page.head.prepend(
    meta(page, { charset: 'utf-8' }),
    meta(page, { 'http-equiv': 'Content-Security-Policy', content: POLICY }),
    meta(page, { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
  );
  const main = page.createElement('main');
  main.className = 'report';
  const copy = page.importNode(sheet, true);
  for (const one of copy.querySelectorAll('[data-screen-only]')) one.remove();
  main.append(copy);
  page.body.append(main);
  // As text: the tool's own policy, which this document shares, refuses an inline style.
  const markup = page.documentElement.outerHTML.replace(
    '</head>',
    () => `<style>${STYLES}</style></head>`,
  );
  return `<!doctype html>\n${markup}\n`;
}

function meta(page: Document, attributes: Readonly<Record<string, string>>): HTMLMetaElement {
  const element = page.createElement('meta');
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}
