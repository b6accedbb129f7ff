import type { Catalogue } from '../catalogue';

/** What is wrong with a table or a shot of the notebook. */
export const notebookReasons: Catalogue['reasons'] = {
  csvEmpty: {
    message: 'La tabla no tiene ninguna fila bajo el encabezado.',
    remedy: 'Escriba una fila por disparo.',
  },
  notInTable: {
    message: 'La tabla no lo indica.',
  },
  notReduced: {
    message: 'Este disparo aún no se ha reducido.',
    remedy: 'Abra su película, mídala y añádalo de nuevo al cuaderno.',
  },
  resultOfOtherFootage: {
    message:
      'El resultado es de otra grabación que el disparo de este nombre; el disparo se conserva como no reducido.',
    remedy: 'Reduzca de nuevo el disparo.',
  },
  resultWithoutShot: {
    message:
      'Junto al resultado no hay ningún archivo de disparo con este nombre, así que no se sabe qué comparte con otros.',
    remedy: 'Elija los dos archivos, NOMBRE.shot.json y NOMBRE.result.json.',
  },
  csvColumnMissing: {
    message: 'La tabla no tiene la columna «{column}».',
    remedy: 'Nómbrela en el encabezado, con su unidad: «{example}».',
  },
  csvColumnTwice: {
    message: 'La columna «{column}» aparece dos veces.',
    remedy: 'Deje fuera una de ellas.',
  },
  csvColumnsUnknown: {
    message: 'Las columnas con otros nombres no se importaron: {columns}.',
    remedy: 'Guarde una tabla desde aquí para ver los nombres conocidos.',
  },
  csvNameTwice: {
    message: 'Fila {row}: más arriba ya hay un disparo llamado «{name}».',
    remedy: 'Dé a cada disparo un nombre propio.',
  },
  csvNoName: {
    message: 'Fila {row}: el disparo no tiene nombre.',
    remedy: 'Rellene la columna «{column}».',
  },
  csvNoUncertainty: {
    message: 'Fila {row}: junto a «{column}» no hay ninguna incertidumbre típica de 0 o más.',
    remedy: 'Rellene la columna «{ofU}».',
  },
  csvNumber: {
    message: 'Fila {row}, columna «{column}»: «{typed}» no es un número.',
    remedy: 'Escriba los números de la tabla con punto decimal y sin unidad: 181.3.',
  },
  csvRowLength: {
    message: 'La fila {row} tiene {cells} celdas; el encabezado, {header}.',
    remedy: 'Busque en ella o más arriba una coma que falta o unas comillas sin cerrar.',
  },
  csvUnit: {
    message:
      '{form, select, none {La columna «{column}» no indica ninguna unidad.} other {La columna «{column}» está en «{symbol}», que no es una unidad posible para ella.}}',
    remedy: 'Escríbala tras una coma; una de estas: {known}.',
  },
  shotWithoutUncertainty: {
    message:
      '{form, select, stated {El disparo {shot} no indica ninguna incertidumbre propia con la que ponderarlo.} budget {El balance de {shot} no contiene nada propio del disparo con lo que ponderarlo.} other {El disparo {shot} no tiene ningún valor con incertidumbre propia mayor que cero, con la que se ponderan los disparos.}}',
    remedy:
      '{form, select, stated {Indique una, o deje fuera el disparo.} budget {Reduzca de nuevo el disparo.} other {Mire el balance de ese disparo, o déjelo fuera.}}',
  },
  tooFewShots: {
    message:
      'Con {shots, plural, one {# disparo} other {# disparos}} no se ve ninguna dispersión; hacen falta al menos {fewest}.',
    remedy: 'Añada disparos con velocidad de salida.',
  },
};
