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
  csvColumnMissing: {
    message: 'In der Tabelle fehlt die Spalte „{column}“.',
    remedy: 'Nennen Sie sie in der Kopfzeile mit ihrer Einheit: „{example}“.',
  },
  csvColumnTwice: {
    message: 'Die Spalte „{column}“ steht zweimal da.',
    remedy: 'Lassen Sie eine von beiden weg.',
  },
  csvColumnsUnknown: {
    message: 'Spalten mit anderen Namen wurden nicht übernommen: {columns}.',
    remedy: 'Speichern Sie von hier aus eine Tabelle, um die bekannten Namen zu sehen.',
  },
  csvNameTwice: {
    message: 'Zeile {row}: Ein Schuss namens „{name}“ steht schon weiter oben.',
    remedy: 'Geben Sie jedem Schuss einen eigenen Namen.',
  },
  csvNoName: {
    message: 'Zeile {row}: Der Schuss hat keinen Namen.',
    remedy: 'Füllen Sie die Spalte „{column}“ aus.',
  },
  csvNoUncertainty: {
    message: 'Zeile {row}: Neben „{column}“ steht keine Standardunsicherheit von mindestens 0.',
    remedy: 'Füllen Sie die Spalte „{ofU}“ aus.',
  },
  csvNumber: {
    message: 'Zeile {row}, Spalte „{column}“: „{typed}“ ist keine Zahl.',
    remedy: 'Schreiben Sie Zahlen in der Tabelle mit Dezimalpunkt und ohne Einheit: 181.3.',
  },
  csvRowLength: {
    message: 'Zeile {row} hat {cells} Felder, die Kopfzeile {header}.',
    remedy:
      'Suchen Sie darin oder darüber nach einem fehlenden Komma oder einem offenen Anführungszeichen.',
  },
  csvUnit: {
    message:
      '{form, select, none {Die Spalte „{column}“ nennt keine Einheit.} other {Die Spalte „{column}“ ist in „{symbol}“, was dafür keine mögliche Einheit ist.}}',
    remedy: 'Schreiben Sie sie nach einem Komma; möglich sind: {known}.',
  },
  shotWithoutUncertainty: {
    message:
      '{form, select, stated {Für den Schuss {shot} ist keine eigene Unsicherheit angegeben, nach der er gewichtet werden könnte.} budget {Das Budget von {shot} enthält nichts, was nur diesem Schuss eigen ist und nach dem er gewichtet werden könnte.} other {Der Schuss {shot} hat keinen Wert mit eigener Unsicherheit über null, nach der Schüsse gewichtet werden.}}',
    remedy:
      '{form, select, stated {Geben Sie eine an, oder lassen Sie den Schuss weg.} budget {Werten Sie den Schuss neu aus.} other {Sehen Sie sich das Budget dieses Schusses an, oder lassen Sie ihn weg.}}',
  },
  tooFewShots: {
    message:
      '{shots, plural, =0 {Ohne Schuss} one {Mit # Schuss} other {Mit # Schüssen}} zeigt sich keine Streuung; mindestens {fewest} sind nötig.',
    remedy: 'Fügen Sie Schüsse mit Austrittsgeschwindigkeit hinzu.',
  },
};
