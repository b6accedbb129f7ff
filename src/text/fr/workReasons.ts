import type { Catalogue } from '../catalogue';

/** Files that cannot be used, work that was not kept and threads that stopped. */
export const workReasons: Catalogue['reasons'] = {
  cancelled: {
    message: 'Le travail a été annulé.',
  },
  draftNotKept: {
    message: 'Le navigateur n’a pas gardé les données de ce tir.',
    remedy: 'Enregistrez le fichier de tir avant de fermer la fenêtre.',
  },
  notDraft: {
    message: 'Les données gardées ne peuvent être lues.',
  },
  sampleNotFetched: {
    message: 'Le fichier d’exemple {name} n’a pas pu être obtenu.',
    remedy: 'Vérifiez que le programme est encore servi, puis ouvrez-le de nouveau.',
  },
  notJson: {
    message:
      '{form, select, shot {Ce n’est pas un fichier de tir} setup {Ce n’est pas un fichier de montage} other {Le fichier ne peut être lu}} : {why}.',
    remedy:
      '{form, select, shot {Choisissez un fichier dont le nom finit par .shot.json.} setup {Choisissez un fichier dont le nom finit par .setup.json.} notebook {Choisissez un fichier dont le nom finit par .notebook.json.} other {Écrivez-le de nouveau.}}',
  },
  notShot: {
    message: 'Ce n’est pas un fichier de tir : son « format » n’est pas « {format} ».',
    remedy: 'Choisissez un fichier dont le nom finit par .shot.json.',
  },
  notSetup: {
    message: 'Ce n’est pas un fichier de montage : son « format » n’est pas « {format} ».',
    remedy: 'Choisissez un fichier dont le nom finit par .setup.json.',
  },
  notNotebook: {
    message: 'Ce n’est pas un cahier : son « format » n’est pas « {format} ».',
    remedy: 'Choisissez un fichier dont le nom finit par .notebook.json.',
  },
  notResult: {
    message: 'Ce n’est pas un fichier de résultat : son « format » n’est pas « {format} ».',
    remedy: 'Choisissez un fichier dont le nom finit par .result.json.',
  },
  newerVersion: {
    message:
      'Le fichier de tir a la version {version} ; ce programme lit jusqu’à la version {known}.',
    remedy: 'Ouvrez-le avec le programme plus récent qui l’a écrit, ou mettez celui-ci à jour.',
  },
  newerSetup: {
    message:
      'Le fichier de montage a la version {version} ; ce programme lit jusqu’à la version {known}.',
    remedy: 'Ouvrez-le avec le programme plus récent qui l’a écrit, ou mettez celui-ci à jour.',
  },
  newerNotebook: {
    message: 'Le cahier a la version {version} ; ce programme lit jusqu’à la version {known}.',
    remedy: 'Ouvrez-le avec le programme plus récent qui l’a écrit, ou mettez celui-ci à jour.',
  },
  otherResultVersion: {
    message: 'Le fichier de résultat a la version {version} ; ce programme lit la version {known}.',
    remedy: 'Dépouillez de nouveau le tir avec ce programme.',
  },
  invalidShot: {
    message:
      'Le fichier de tir ne peut être utilisé : {why}{more, plural, =0 {} one { (et # autre)} other { (et # autres)}}.',
    remedy: 'Corrigez cette entrée ; le schéma se trouve dans schemas/shot.schema.json.',
  },
  invalidSetup: {
    message: 'Le fichier de montage ne peut être utilisé : {why}',
    remedy: 'Corrigez cette entrée ; le schéma se trouve dans schemas/setup.schema.json.',
  },
  invalidNotebook: {
    message: 'Le cahier ne peut être utilisé : {why}.',
    remedy: 'Corrigez cette entrée ; le schéma se trouve dans schemas/notebook.schema.json.',
  },
  invalidResult: {
    message: 'Le fichier de résultat ne peut être utilisé : {why}.',
    remedy: 'Dépouillez de nouveau le tir ; le schéma se trouve dans schemas/result.schema.json.',
  },
  workNotKept: {
    message:
      'Le navigateur ne garde pas ce travail : {form, select, full {son stockage est plein} other {{why}}}.',
    remedy:
      'Continuez, et enregistrez le fichier de tir et le cahier avant de fermer ou de recharger la fenêtre.',
  },
  workLost: {
    message:
      'Ce que contenait cette fenêtre est perdu : le stockage du navigateur a été vidé avant qu’il ne soit gardé de nouveau.',
    remedy:
      'Ouvrez son fichier de tir ou son enregistrement : les données saisies sont proposées si le navigateur les a encore. Mesurez ensuite de nouveau.',
  },
  footageNotKept: {
    message:
      'Le navigateur ne garde pas de copie de cet enregistrement : {form, select, full {son stockage est plein} other {{why}}}.',
    remedy: 'Les données sont gardées ; après un rechargement, l’enregistrement vous sera demandé.',
  },
  setupNotKept: {
    message: 'Le navigateur n’a pas gardé le montage {setup}.',
    remedy: 'Enregistrez-le dans un fichier avant de fermer la fenêtre.',
  },
  setupSizeDiffers: {
    message:
      'Les images ont {width} × {height} px ; le montage {setup} a été marqué sur des images de {setupWidth} × {setupHeight} px.',
    remedy: 'Choisissez le montage dans lequel ce clip a été filmé.',
  },
  calibrationStopped: {
    message: 'Le processus d’arrière-plan de l’étalonnage s’est arrêté. {because}',
    remedy: 'Réessayez, avec moins d’images ou des images plus petites.',
  },
  modelsStopped: {
    message: 'Le processus d’arrière-plan des modèles de lancement s’est arrêté. {because}',
    remedy: 'Prédisez de nouveau.',
  },
  notebookStopped: {
    message: 'Le processus d’arrière-plan du cahier s’est arrêté. {because}',
    remedy: 'Réessayez ; ce qui est dans le cahier s’y trouve toujours.',
  },
  planningStopped: {
    message: 'Le processus d’arrière-plan de la planification s’est arrêté. {because}',
    remedy: 'Changez un réglage ou redemandez.',
  },
  queueStopped: {
    message: 'Un processus d’arrière-plan qui mesurait ce clip s’est arrêté. {because}',
    remedy: 'Mesurez-le de nouveau ; s’il s’arrête encore, ouvrez le clip seul.',
  },
  sceneryStopped: {
    message: 'Le processus d’arrière-plan qui parcourt le film s’est arrêté. {because}',
    remedy: 'Ouvrez de nouveau le film ; tout le reste fonctionne sans lui.',
  },
  threadDied: {
    message: 'Un processus d’arrière-plan s’est arrêté. {because}',
    remedy:
      'Les données et le résultat sont conservés, et il est relancé : mesurez de nouveau. S’il s’arrête à chaque fois, fermez d’autres onglets et programmes, ou rechargez la page.',
  },
  threadsNotStarted: {
    message: 'Un processus d’arrière-plan n’a pas démarré. {because}',
    remedy: 'Les données et le résultat sont conservés : réessayez, ou rechargez la page.',
  },
  threadEnded: {
    message: 'Le navigateur l’a arrêté sans donner de raison ; la mémoire a peut-être manqué.',
  },
  threadFailed: {
    message: 'Il a signalé une erreur : {said}.',
  },
  threadNotFetched: {
    message: 'Son fichier n’a pas pu être obtenu : le réseau ou le serveur manque peut-être.',
  },
  webAssemblyRefused: {
    message:
      'Cette page ne peut pas exécuter WebAssembly, sans lequel rien n’est décodé ni mesuré : {why}',
    remedy:
      "Faites en sorte que la Content-Security-Policy du serveur autorise script-src 'self' 'wasm-unsafe-eval', ou n’en envoie aucune, puis rechargez la page ; un navigateur restreint par ses réglages doit l’autoriser aussi.",
  },
  visionMissing: {
    message: 'La bibliothèque d’images OpenCV n’a pas pu être obtenue : {why}.',
    remedy:
      'Vérifiez que le réseau et le serveur sont là, puis mesurez de nouveau ; les données et le résultat sont conservés.',
  },
  visionFailed: {
    message: 'La bibliothèque d’images OpenCV a échoué : {why}.',
    remedy:
      'La mémoire a peut-être manqué : fermez d’autres onglets et programmes, puis mesurez de nouveau.',
  },
  outOfMemory: {
    message: 'Le décodeur ffmpeg a manqué de mémoire.',
    remedy:
      'Fermez d’autres onglets et programmes, puis réessayez ; un film aux images plus petites en demande moins.',
  },
  unexpected: {
    message: 'Une erreur inattendue : {said}',
  },
  shotNotSaved: {
    message:
      'Le tir ne peut pas encore être enregistré dans un fichier. {because} Il est gardé en attendant dans ce navigateur.',
  },
};
