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
  workLost: {
    message:
      'Was dieses Fenster hielt, ist verloren: Der Speicher des Browsers wurde geleert, bevor es neu behalten war.',
    remedy:
      'Öffnen Sie die Schussdatei oder die Aufnahme dazu: Eingaben dafür werden angeboten, soweit der Browser sie noch hat. Messen Sie dann erneut.',
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
    message: 'Der Hintergrundprozess der Kalibrierung brach ab. {because}',
    remedy: 'Versuchen Sie es noch einmal, mit weniger oder kleineren Bildern.',
  },
  modelsStopped: {
    message: 'Der Hintergrundprozess der Startmodelle brach ab. {because}',
    remedy: 'Sagen Sie erneut vorher.',
  },
  notebookStopped: {
    message: 'Der Hintergrundprozess des Versuchsbuchs brach ab. {because}',
    remedy: 'Versuchen Sie es noch einmal; was im Versuchsbuch steht, ist noch da.',
  },
  planningStopped: {
    message: 'Der Hintergrundprozess der Planung brach ab. {because}',
    remedy: 'Ändern Sie eine Einstellung, oder fragen Sie erneut.',
  },
  queueStopped: {
    message: 'Ein Hintergrundprozess, der diesen Clip maß, brach ab. {because}',
    remedy: 'Messen Sie ihn erneut; bricht es wieder ab, öffnen Sie den Clip einzeln.',
  },
  sceneryStopped: {
    message: 'Der Hintergrundprozess, der den Film durchsieht, brach ab. {because}',
    remedy: 'Öffnen Sie den Film erneut; alles andere geht auch ohne ihn.',
  },
  threadDied: {
    message: 'Ein Hintergrundprozess brach ab. {because}',
    remedy:
      'Eingaben und Ergebnis bleiben erhalten, und er wird neu gestartet: messen Sie erneut. Bricht er jedes Mal ab, schließen Sie andere Tabs und Programme, oder laden Sie die Seite neu.',
  },
  threadsNotStarted: {
    message: 'Ein Hintergrundprozess startete nicht. {because}',
    remedy:
      'Eingaben und Ergebnis bleiben erhalten: versuchen Sie es noch einmal, oder laden Sie die Seite neu.',
  },
  threadEnded: {
    message:
      'Der Browser beendete ihn ohne Angabe eines Grundes; vielleicht reichte der Speicher nicht.',
  },
  threadFailed: {
    message: 'Er meldete einen Fehler: {said}.',
  },
  threadNotFetched: {
    message: 'Seine Datei konnte nicht geholt werden: vielleicht fehlt das Netz oder der Server.',
  },
  webAssemblyRefused: {
    message:
      'Diese Seite darf kein WebAssembly ausführen, ohne das nichts dekodiert und gemessen wird: {why}',
    remedy:
      "Lassen Sie den Server in seiner Content-Security-Policy script-src 'self' 'wasm-unsafe-eval' erlauben oder keine senden, und laden Sie die Seite neu; auch ein Browser, den seine Einstellungen einschränken, muss es erlauben.",
  },
  visionMissing: {
    message: 'Die Bildbibliothek OpenCV konnte nicht geholt werden: {why}.',
    remedy:
      'Prüfen Sie, ob Netz und Server da sind, und messen Sie dann erneut; Eingaben und Ergebnis bleiben erhalten.',
  },
  visionFailed: {
    message: 'Die Bildbibliothek OpenCV versagte: {why}.',
    remedy:
      'Vielleicht reichte der Speicher nicht: Schließen Sie andere Tabs und Programme, und messen Sie dann erneut.',
  },
  outOfMemory: {
    message: 'Dem Dekoder ffmpeg ging der Speicher aus.',
    remedy:
      'Schließen Sie andere Tabs und Programme, und versuchen Sie es dann noch einmal; Filme mit kleineren Bildern brauchen weniger.',
  },
  unexpected: {
    message: 'Ein unerwarteter Fehler: {said}',
  },
  shotNotSaved: {
    message:
      'Der Schuss lässt sich noch nicht in eine Datei speichern. {because} Er bleibt solange in diesem Browser.',
  },
};
