import type { English, SameShape } from '../catalogue';
import { advice } from './advice';
import { inputs, settings } from './inputs';
import { betweenFrames, sources, tables } from './tables';
import { findings, fit, statement } from './told';

export const report: SameShape<English['report']> = {
  title: 'Bericht',
  interval: '{low} bis {high}',
  nothingYet: 'Noch ist nichts gemessen: Ein Bericht entsteht aus einem Ergebnis.',
  backToShot: 'Zurück zum Schuss',
  stale:
    'Seit der Messung wurden Eingaben geändert. Der Bericht gehört zu den früheren Eingaben und ihrem Ergebnis.',
  fetching: 'Bilder werden aus dem Film geholt…',
  pageTitle: '{shot} Bericht',
  bar: {
    extent: 'Umfang',
    summary: 'Eine Seite',
    full: 'Ausführlich',
    print: 'Drucken oder als PDF speichern…',
    savePage: 'Als Webseite speichern…',
    copy: 'Aussage kopieren',
    result: 'Ergebnis-CSV…',
    centres: 'Mittelpunkte-CSV…',
    budget: 'Budget-CSV…',
    resultJson: 'Ergebnis-JSON…',
    shotFile: 'Schussdatei…',
    saveSvg: 'SVG speichern…',
    savePng: 'PNG speichern…',
    kind: { page: 'Webseite', table: 'Tabelle', drawing: 'Zeichnung', picture: 'Bild' },
  },
  pictures: {
    puttingTogether: 'Der Flug wird zusammengesetzt…',
    flight: 'Die Kugel in vielen Bildern ihres Flugs, in einem Bild vereint',
    flightCaption: 'Der Flug: Bilder, deren Kugeln nebeneinanderliegen, über der ruhenden Szene',
    caption:
      'Bild {frame}, {kind, select, whole {letztes mit ganzer Membran} open {erstes mit offener Membran} other {dem Austritt am nächsten}}',
    muzzle:
      'Film um die Mündung in Bild {frame}, {kind, select, whole {letztes mit ganzer Membran} open {erstes mit offener Membran} other {dem Austritt am nächsten}}',
  },
  document: {
    unnamed: 'Schuss ohne Namen',
    what: 'Austrittsgeschwindigkeit und Bersten der Membran aus Hochgeschwindigkeitsfilm',
    section: {
      film: 'Was der Film zeigt',
      warnings: 'Warnungen',
      redo: 'Zum Wiederholen',
      motion: 'Bewegung',
      findings: 'Was der Film sonst zeigt',
      uncertainty: 'Unsicherheit',
      fit: 'Anpassung',
      stated: 'Angaben',
      centres: 'Mittelpunkte',
      cautions: 'Sicherheitshinweise',
    },
    largest:
      'Die Unsicherheit der Austrittsgeschwindigkeit kommt vor allem von: {sources} (der Varianz).',
    noWarnings: 'Die Messung ergab keine.',
    moreWarnings: 'Und {more} weitere: siehe ausführlicher Bericht.',
    advice: 'Was am meisten helfen würde:',
    adviceLine: '{share} {source}. {remedy}',
    notes: 'Notizen: {notes}',
    motion: 'Bewegung: {model}.',
    fact: {
      software: 'Software',
      madeOn: 'Bericht erstellt am',
      footage: 'Aufnahme',
      sha256: 'SHA-256 der Aufnahme',
      film: 'Film',
      decoder: 'Decodiert von',
      scale: 'Gefundener Maßstab',
      shotVersion: 'Version der Schussdatei',
    },
    notWorkedOut: 'nicht berechnet',
    filmIs: '{container}, {codec}, {width} × {height} Pixel, {bits} Bit, {frames} Bilder',
    scaleIs: '{value} mm/px, Standardunsicherheit {u} mm/px',
    pathAndMore: '{path} und {more} weitere',
    redoBriefly:
      'exitframe {software}, Aufnahme {path} mit SHA-256 {sha256}, Startwert {seed}.{known, select, yes { Angepasste Bewegung: {model}.} other {}} Der ausführliche Bericht enthält jede Eingabe mit ihrer Unsicherheit und die Schussdatei.',
    redo: 'Gleiche Eingaben, gleiches Ergebnis: Legen Sie die Schussdatei unten neben {path} und rufen Sie npm run --silent reduce mit ihrem Namen auf, oder öffnen Sie beide in exitframe. Längen stehen in Metern, Zeiten in Sekunden, Bildpositionen in Pixeln.',
  },
  statement,
  findings,
  fit,
  tables,
  sources,
  betweenFrames,
  advice,
  inputs,
  settings,
};
