import type { English, SameShape } from '../catalogue';

export const result: SameShape<English['result']> = {
  advice: 'Was am meisten helfen würde',
  evidence: {
    title: 'Belege',
    stale: 'Eingaben wurden geändert: erneut messen. Unten steht das frühere Ergebnis.',
  },
  noSpeed: 'Keine Austrittsgeschwindigkeit:',
  noLead: 'Kein Vorlauf der Membran:',
  else: {
    title: 'Was der Film sonst zeigt',
    brokenFrom: 'Ab Bild {frame} ist die Kugel nicht mehr ganz',
  },
  fit: {
    title: 'Anpassung: {model}',
    check: '{verdict}: {message}',
    verdict: { passed: 'bestanden', cautious: 'auf der sicheren Seite', failed: 'bitte prüfen' },
  },
  centres: {
    title: 'Mittelpunkte',
    summary: 'Mittelpunkte aus {found} Bildern, {used} verwendet',
    frame: 'Bild',
    time: 'Zeit, ms',
    x: 'x, px',
    y: 'y, px',
    distance: 'Strecke, mm',
    used: 'Verwendet',
    use: {
      yes: 'ja',
      no: 'nein: {reason}',
      leftOut: 'ausgelassen',
      manual: '{use} (von Hand gesetzt)',
    },
    byHand: 'Von Hand',
    restore: 'Wieder verwenden',
    reject: 'Verwerfen',
  },
};
