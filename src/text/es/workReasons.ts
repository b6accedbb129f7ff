import type { Catalogue } from '../catalogue';

/** Files that cannot be used, work that was not kept and threads that stopped. */
export const workReasons: Catalogue['reasons'] = {
  cancelled: {
    message: 'El trabajo se canceló.',
  },
  draftNotKept: {
    message: 'El navegador no conservó los datos de este disparo.',
    remedy: 'Guarde el archivo de disparo antes de cerrar la ventana.',
  },
  notDraft: {
    message: 'Los datos guardados no se pueden leer.',
  },
  sampleNotFetched: {
    message: 'No se pudo obtener el archivo de ejemplo {name}.',
    remedy: 'Compruebe que el programa siga servido y ábralo de nuevo.',
  },
  notJson: {
    message:
      '{form, select, shot {Esto no es un archivo de disparo} setup {Esto no es un archivo de montaje} other {No se puede leer el archivo}}: {why}.',
    remedy:
      '{form, select, shot {Elija un archivo cuyo nombre acabe en .shot.json.} setup {Elija un archivo cuyo nombre acabe en .setup.json.} notebook {Elija un archivo cuyo nombre acabe en .notebook.json.} other {Escríbalo de nuevo.}}',
  },
  notShot: {
    message: 'Esto no es un archivo de disparo: su «format» no es «{format}».',
    remedy: 'Elija un archivo cuyo nombre acabe en .shot.json.',
  },
  notSetup: {
    message: 'Esto no es un archivo de montaje: su «format» no es «{format}».',
    remedy: 'Elija un archivo cuyo nombre acabe en .setup.json.',
  },
  notNotebook: {
    message: 'Esto no es un cuaderno: su «format» no es «{format}».',
    remedy: 'Elija un archivo cuyo nombre acabe en .notebook.json.',
  },
  notResult: {
    message: 'Esto no es un archivo de resultado: su «format» no es «{format}».',
    remedy: 'Elija un archivo cuyo nombre acabe en .result.json.',
  },
  newerVersion: {
    message:
      'El archivo de disparo tiene la versión {version}; este programa lee hasta la versión {known}.',
    remedy: 'Ábralo con el programa más nuevo que lo escribió, o actualice este.',
  },
  newerSetup: {
    message:
      'El archivo de montaje tiene la versión {version}; este programa lee hasta la versión {known}.',
    remedy: 'Ábralo con el programa más nuevo que lo escribió, o actualice este.',
  },
  newerNotebook: {
    message: 'El cuaderno tiene la versión {version}; este programa lee hasta la versión {known}.',
    remedy: 'Ábralo con el programa más nuevo que lo escribió, o actualice este.',
  },
  otherResultVersion: {
    message:
      'El archivo de resultado tiene la versión {version}; este programa lee la versión {known}.',
    remedy: 'Reduzca de nuevo el disparo con este programa.',
  },
  invalidShot: {
    message:
      'El archivo de disparo no se puede usar: {why}{more, plural, =0 {} other { (y # más)}}.',
    remedy: 'Corrija esa entrada; el esquema está en schemas/shot.schema.json.',
  },
  invalidSetup: {
    message: 'El archivo de montaje no se puede usar: {why}',
    remedy: 'Corrija esa entrada; el esquema está en schemas/setup.schema.json.',
  },
  invalidNotebook: {
    message: 'El cuaderno no se puede usar: {why}.',
    remedy: 'Corrija esa entrada; el esquema está en schemas/notebook.schema.json.',
  },
  invalidResult: {
    message: 'El archivo de resultado no se puede usar: {why}.',
    remedy: 'Reduzca de nuevo el disparo; el esquema está en schemas/result.schema.json.',
  },
  workNotKept: {
    message:
      'El navegador no conserva este trabajo: {form, select, full {su almacenamiento está lleno} other {{why}}}.',
    remedy:
      'Siga trabajando y guarde el archivo de disparo y el cuaderno antes de cerrar o recargar la ventana.',
  },
  workLost: {
    message:
      'Lo que contenía esta ventana se ha perdido: se vació el almacenamiento del navegador antes de conservarlo de nuevo.',
    remedy:
      'Abra su archivo de disparo o su grabación: los datos introducidos se ofrecen si el navegador aún los tiene. Después mida de nuevo.',
  },
  footageNotKept: {
    message:
      'El navegador no conserva ninguna copia de esta grabación: {form, select, full {su almacenamiento está lleno} other {{why}}}.',
    remedy: 'Los datos se conservan; al recargar se le pedirá la grabación.',
  },
  setupNotKept: {
    message: 'El navegador no conservó el montaje {setup}.',
    remedy: 'Guárdelo en un archivo antes de cerrar la ventana.',
  },
  setupSizeDiffers: {
    message:
      'Los fotogramas tienen {width} × {height} px; el montaje {setup} se marcó en fotogramas de {setupWidth} × {setupHeight} px.',
    remedy: 'Elija el montaje en el que se filmó este clip.',
  },
  calibrationStopped: {
    message: 'El proceso en segundo plano de la calibración se detuvo. {because}',
    remedy: 'Inténtelo de nuevo, con menos imágenes o más pequeñas.',
  },
  modelsStopped: {
    message: 'El proceso en segundo plano de los modelos de lanzamiento se detuvo. {because}',
    remedy: 'Prediga de nuevo.',
  },
  notebookStopped: {
    message: 'El proceso en segundo plano del cuaderno se detuvo. {because}',
    remedy: 'Inténtelo de nuevo; lo que hay en el cuaderno sigue ahí.',
  },
  planningStopped: {
    message: 'El proceso en segundo plano de la planificación se detuvo. {because}',
    remedy: 'Cambie un ajuste o pregunte de nuevo.',
  },
  queueStopped: {
    message: 'Un proceso en segundo plano que medía este clip se detuvo. {because}',
    remedy: 'Mídalo de nuevo; si vuelve a detenerse, abra el clip por separado.',
  },
  sceneryStopped: {
    message: 'El proceso en segundo plano que recorre la película se detuvo. {because}',
    remedy: 'Abra de nuevo la película; todo lo demás funciona sin él.',
  },
  threadDied: {
    message: 'Un proceso en segundo plano se detuvo. {because}',
    remedy:
      'Los datos y el resultado se conservan, y se inicia de nuevo: mida de nuevo. Si se detiene cada vez, cierre otras pestañas y programas, o recargue la página.',
  },
  threadsNotStarted: {
    message: 'Un proceso en segundo plano no se inició. {because}',
    remedy: 'Los datos y el resultado se conservan: inténtelo de nuevo o recargue la página.',
  },
  threadEnded: {
    message: 'El navegador lo terminó sin indicar el motivo; quizá faltó memoria.',
  },
  threadFailed: {
    message: 'Dio un error: {said}.',
  },
  threadNotFetched: {
    message: 'No se pudo obtener su archivo: quizá falte la red o el servidor.',
  },
  webAssemblyRefused: {
    message:
      'Esta página no puede ejecutar WebAssembly, sin el cual no se decodifica ni se mide nada: {why}',
    remedy:
      "Haga que la Content-Security-Policy del servidor permita script-src 'self' 'wasm-unsafe-eval', o que no envíe ninguna, y recargue la página; un navegador restringido por sus ajustes también tiene que permitirlo.",
  },
  visionMissing: {
    message: 'No se pudo obtener la biblioteca de imagen OpenCV: {why}.',
    remedy:
      'Compruebe que la red y el servidor están disponibles y mida de nuevo; los datos y el resultado se conservan.',
  },
  visionFailed: {
    message: 'La biblioteca de imagen OpenCV falló: {why}.',
    remedy: 'Quizá faltó memoria: cierre otras pestañas y programas y mida de nuevo.',
  },
  outOfMemory: {
    message: 'Al decodificador ffmpeg le faltó memoria.',
    remedy:
      'Cierre otras pestañas y programas e inténtelo de nuevo; una película con imágenes más pequeñas necesita menos.',
  },
  unexpected: {
    message: 'Un error inesperado: {said}',
  },
  shotNotSaved: {
    message:
      'El disparo aún no se puede guardar en un archivo. {because} Mientras tanto se conserva en este navegador.',
  },
};
