import type { Catalogue } from '../catalogue';

/** Files that cannot be used, work that was not kept and threads that stopped. */
export const workReasons: Catalogue['reasons'] = {
  cancelled: {
    message: 'Die Arbeit wurde abgebrochen.',
  },
  draftNotKept: {
    message: 'Der Browser hat die Eingaben dieses Schusses nicht behalten.',
    remedy: 'Speichern Sie die Schussdatei, bevor Sie das Fenster schließen.',
  },
  notDraft: {
    message: 'Die gesicherten Eingaben lassen sich nicht lesen.',
  },
  sampleNotFetched: {
    message: 'Die Beispieldatei {name} konnte nicht geholt werden.',
    remedy: 'Prüfen Sie, ob das Programm noch bereitgestellt wird, und öffnen Sie sie dann erneut.',
  },
  notJson: {
    message:
      '{form, select, shot {Dies ist keine Schussdatei} setup {Dies ist keine Aufbaudatei} other {Die Datei lässt sich nicht lesen}}: {why}.',
    remedy:
      '{form, select, shot {Wählen Sie eine Datei, deren Name auf .shot.json endet.} setup {Wählen Sie eine Datei, deren Name auf .setup.json endet.} notebook {Wählen Sie eine Datei, deren Name auf .notebook.json endet.} other {Schreiben Sie sie neu.}}',
  },
  notShot: {
    message: 'Dies ist keine Schussdatei: „format“ ist darin nicht „{format}“.',
    remedy: 'Wählen Sie eine Datei, deren Name auf .shot.json endet.',
  },
  notSetup: {
    message: 'Dies ist keine Aufbaudatei: „format“ ist darin nicht „{format}“.',
    remedy: 'Wählen Sie eine Datei, deren Name auf .setup.json endet.',
  },
  notNotebook: {
    message: 'Dies ist kein Versuchsbuch: „format“ ist darin nicht „{format}“.',
    remedy: 'Wählen Sie eine Datei, deren Name auf .notebook.json endet.',
  },
  notResult: {
    message: 'Dies ist keine Ergebnisdatei: „format“ ist darin nicht „{format}“.',
    remedy: 'Wählen Sie eine Datei, deren Name auf .result.json endet.',
  },
  newerVersion: {
    message:
      'Die Schussdatei hat die Version {version}; dieses Programm liest bis Version {known}.',
    remedy:
      'Öffnen Sie sie mit dem neueren Programm, das sie geschrieben hat, oder aktualisieren Sie dieses.',
  },
  newerSetup: {
    message:
      'Die Aufbaudatei hat die Version {version}; dieses Programm liest bis Version {known}.',
    remedy:
      'Öffnen Sie sie mit dem neueren Programm, das sie geschrieben hat, oder aktualisieren Sie dieses.',
  },
  newerNotebook: {
    message:
      'Das Versuchsbuch hat die Version {version}; dieses Programm liest bis Version {known}.',
    remedy:
      'Öffnen Sie es mit dem neueren Programm, das es geschrieben hat, oder aktualisieren Sie dieses.',
  },
  otherResultVersion: {
    message: 'Die Ergebnisdatei hat die Version {version}; dieses Programm liest Version {known}.',
    remedy: 'Werten Sie den Schuss mit diesem Programm neu aus.',
  },
  invalidShot: {
    message:
      'Die Schussdatei lässt sich nicht verwenden: {why}{more, plural, =0 {} other { (und # weitere Fehler)}}.',
    remedy: 'Berichtigen Sie diesen Eintrag; das Schema steht in schemas/shot.schema.json.',
  },
  invalidSetup: {
    message: 'Die Aufbaudatei lässt sich nicht verwenden: {why}',
    remedy: 'Berichtigen Sie diesen Eintrag; das Schema steht in schemas/setup.schema.json.',
  },
  invalidNotebook: {
    message: 'Das Versuchsbuch lässt sich nicht verwenden: {why}.',
    remedy: 'Berichtigen Sie diesen Eintrag; das Schema steht in schemas/notebook.schema.json.',
  },
  invalidResult: {
    message: 'Die Ergebnisdatei lässt sich nicht verwenden: {why}.',
    remedy: 'Werten Sie den Schuss neu aus; das Schema steht in schemas/result.schema.json.',
  },
  workNotKept: {
    message:
      'Der Browser behält diese Arbeit nicht: {form, select, full {Sein Speicher ist voll} other {{why}}}.',
    remedy:
      'Arbeiten Sie weiter, und speichern Sie Schussdatei und Versuchsbuch, bevor Sie das Fenster schließen oder neu laden.',
  },
  footageNotKept: {
    message:
      'Der Browser behält keine Kopie dieser Aufnahme: {form, select, full {Sein Speicher ist voll} other {{why}}}.',
    remedy:
      'Die Eingaben bleiben erhalten; nach dem Neuladen werden Sie nach der Aufnahme gefragt.',
  },
  setupNotKept: {
    message: 'Der Browser hat den Aufbau {setup} nicht behalten.',
    remedy: 'Speichern Sie ihn in eine Datei, bevor Sie das Fenster schließen.',
  },
  setupSizeDiffers: {
    message:
      'Die Bilder haben {width} × {height} px; der Aufbau {setup} wurde auf Bildern von {setupWidth} × {setupHeight} px markiert.',
    remedy: 'Wählen Sie den Aufbau, in dem dieser Clip gefilmt wurde.',
  },
  calibrationStopped: {
    message: 'Der Hintergrundprozess der Kalibrierung brach ab: {why}',
    remedy: 'Versuchen Sie es noch einmal, mit weniger oder kleineren Bildern.',
  },
  modelsStopped: {
    message: 'Der Hintergrundprozess der Startmodelle brach ab: {why}',
    remedy: 'Sagen Sie erneut vorher.',
  },
  notebookStopped: {
    message: 'Der Hintergrundprozess des Versuchsbuchs brach ab: {why}',
    remedy: 'Versuchen Sie es noch einmal; was im Versuchsbuch steht, ist noch da.',
  },
  planningStopped: {
    message: 'Der Hintergrundprozess der Planung brach ab: {why}',
    remedy: 'Ändern Sie eine Einstellung, oder fragen Sie erneut.',
  },
  queueStopped: {
    message: 'Ein Hintergrundprozess, der diesen Clip maß, brach ab: {why}',
    remedy: 'Messen Sie ihn erneut; bricht es wieder ab, öffnen Sie den Clip einzeln.',
  },
  sceneryStopped: {
    message: 'Der Hintergrundprozess, der den Film durchsieht, brach ab: {why}',
    remedy: 'Öffnen Sie den Film erneut; alles andere geht auch ohne ihn.',
  },
  threadDied: {
    message: 'Ein Hintergrundprozess brach ab: {why}',
    remedy:
      'Er wurde mit derselben Aufnahme und denselben Eingaben neu gestartet; messen Sie erneut.',
  },
  threadsNotStarted: {
    message: 'Ein Hintergrundprozess startete nicht: {why}',
    remedy: 'Laden Sie die Seite neu.',
  },
  unexpected: {
    message: 'Ein unerwarteter Fehler: {said}',
  },
  shotNotSaved: {
    message:
      'Der Schuss lässt sich noch nicht in eine Datei speichern. {because} Er bleibt solange in diesem Browser.',
  },
};
