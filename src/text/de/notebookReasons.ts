import type { Catalogue } from '../catalogue';

/** What is wrong with a table or a shot of the notebook. */
export const notebookReasons: Catalogue['reasons'] = {
  csvEmpty: {
    message: 'Die Tabelle hat unter der Kopfzeile keine Zeile.',
    remedy: 'Schreiben Sie eine Zeile je Schuss.',
  },
  notInTable: {
    message: 'In der Tabelle steht dazu nichts.',
  },
  notReduced: {
    message: 'Dieser Schuss ist noch nicht ausgewertet.',
    remedy:
      'Öffnen Sie seinen Film, messen Sie ihn, und nehmen Sie ihn noch einmal ins Versuchsbuch auf.',
  },
  resultOfOtherFootage: {
    message:
      'Das Ergebnis stammt von einer anderen Aufnahme als der Schuss dieses Namens; der Schuss bleibt als nicht ausgewertet stehen.',
    remedy: 'Werten Sie den Schuss neu aus.',
  },
  resultWithoutShot: {
    message:
      'Neben dem Ergebnis liegt keine Schussdatei dieses Namens; was es mit anderen gemeinsam hat, ist daher nicht bekannt.',
    remedy: 'Wählen Sie beide Dateien, NAME.shot.json und NAME.result.json.',
  },
};
