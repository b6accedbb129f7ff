import type { Catalogue } from '../catalogue';
import { calibrationReasons } from './calibrationReasons';
import { checks } from './checks';
import { filmReasons } from './filmReasons';
import { footageReasons } from './footageReasons';
import { inputReasons } from './inputReasons';
import { launchReasons } from './launchReasons';
import { notebookReasons } from './notebookReasons';
import { planReasons } from './planReasons';
import { resultReasons } from './resultReasons';
import { sealReasons } from './sealReasons';
import { trackReasons } from './trackReasons';
import { workReasons } from './workReasons';

export const reasons: Catalogue['reasons'] = {
  ...checks,
  ...calibrationReasons,
  ...filmReasons,
  ...footageReasons,
  ...inputReasons,
  ...launchReasons,
  ...notebookReasons,
  ...planReasons,
  ...resultReasons,
  ...sealReasons,
  ...trackReasons,
  ...workReasons,
  noRate: {
    message: 'Die Bildrate der Aufnahme ist noch nicht bekannt.',
    remedy:
      'Geben Sie die Bildrate ein, die an der Kamera eingestellt war; die in der Datei ist oft nur die Wiedergaberate.',
  },
  noLength: {
    message: 'Es ist noch keine bekannte Länge eingezeichnet.',
    remedy:
      'Ziehen Sie in der Flugebene eine Linie zwischen zwei Marken, deren Abstand bekannt ist, oder markieren Sie ein Rechteck bekannter Größe.',
  },
  lengthUnstated: {
    message: 'Länge {number} ist eingezeichnet, ihr Wert aber noch nicht eingegeben.',
    remedy: 'Geben Sie den Abstand der beiden Marken ein, oder entfernen Sie die Linie.',
  },
  planeUnstated: {
    message: 'Die Ebene ist markiert, ihre Breite oder Höhe aber noch nicht eingegeben.',
    remedy: 'Geben Sie beide Seiten des Rechtecks ein, oder entfernen Sie es.',
  },
  noMuzzle: {
    message: 'Die Mündungsebene ist noch nicht markiert.',
    remedy: 'Markieren Sie das Rohrende im Film: Dort wird die Austrittsgeschwindigkeit angegeben.',
  },
  lengthsDisagree: {
    message:
      'Die bekannten Längen weichen stärker voneinander ab, als ihre Unsicherheiten erlauben (Chi-Quadrat {chiSquare} bei {dof}).',
    remedy:
      'Prüfen Sie die Enden und den angegebenen Wert jeder Länge und ob alle in der Flugebene liegen.',
  },
  planeDisagrees: {
    message:
      'Die bekannten Längen und die markierte Ebene weichen stärker voneinander ab, als ihre Unsicherheiten erlauben (Chi-Quadrat {chiSquare} bei {dof}); den Maßstab legt die Ebene fest.',
    remedy: 'Prüfen Sie Ecken, Breite und Höhe der Ebene, die Enden jeder Länge und deren Tiefe.',
  },
  timestampsUneven: {
    message:
      'Die Zeitstempel der Datei sind ungleichmäßig ({gaps, plural, one {# Lücke} other {# Lücken}}), es wird aber eine gleichmäßige Bildrate verwendet.',
    remedy:
      'Verwenden Sie bei einem Handyclip die Zeitstempel der Datei; geben Sie sonst die verlorenen Bilder an.',
  },
  framesLost: {
    message:
      '{form, select, jumps {Die Kugel springt zwischen Bildern ({between}): Dort scheinen Bilder verloren zu sein.} other {Die Zeitstempel lassen an {places, plural, one {# Stelle} other {# Stellen}} Platz für verlorene Bilder; ihre Zeiten bleiben, wie sie angegeben sind.}}',
    remedy:
      '{form, select, jumps {Geben Sie die verlorenen Bilder im Schritt „Zeitbasis“ an.} other {Nichts zu tun, wenn die Kamera Bilder verloren hat; die Anpassung verwendet die angegebenen Zeiten.}}',
  },
  playbackRateSuspected: {
    message: 'Die Zeitstempel ergeben {rate} Bilder/s, eine übliche Wiedergaberate.',
    remedy:
      'Falls die Kamera schneller aufgenommen hat, geben Sie ihre Bildrate ein: Alle Geschwindigkeiten hängen davon ab.',
  },
  droppedOutside: {
    message:
      'Nach Bild {after} sind verlorene Bilder angegeben, der Film endet aber mit Bild {last}.',
    remedy: 'Berichtigen Sie die Liste der verlorenen Bilder.',
  },
  noTimestamps: {
    message: 'Die Datei enthält keine eigenen Zeitstempel.',
    remedy: 'Geben Sie stattdessen die Bildrate der Aufnahme ein.',
  },
  timestampsNotRising: {
    message: 'Die Zeitstempel der Datei steigen bei Bild {frame} nicht an.',
    remedy: 'Geben Sie stattdessen die Bildrate der Aufnahme ein.',
  },
  empty: {
    message: 'Hier fehlt eine Angabe.',
    remedy: 'Geben Sie eine Zahl ein, mit Einheit, wenn sie von der gezeigten abweicht.',
  },
  notANumber: {
    message: '„{typed}“ ist keine Zahl.',
    remedy: 'Geben Sie eine Zahl ein, mit Einheit, wenn sie von der gezeigten abweicht.',
  },
  decimalOrThousands: {
    message: '„{typed}“ kann mit Tausendern oder mit Dezimalen gemeint sein.',
    remedy:
      'Schreiben Sie Dezimalen mit Komma und Tausender mit Leerzeichen oder ohne: 7,87 oder 12 000.',
  },
  unknownUnit: {
    message: '„{unit}“ ist hier keine mögliche Einheit.',
    remedy: '{known, select, no {Geben Sie nur die Zahl ein.} other {Möglich sind: {known}.}}',
  },
  divisionByZero: {
    message: '„{typed}“ teilt durch null.',
    remedy: 'Geben Sie einen Nenner ungleich null ein.',
  },
  notPositive: {
    message: 'Der Wert muss größer als 0 sein; {value} ist es nicht.',
  },
  negative: {
    message: 'Der Wert darf nicht negativ sein; {value} ist es.',
  },
  notWhole: {
    message: 'Der Wert muss eine ganze Zahl sein.',
  },
  outOfRange: {
    message:
      '{sides, select, least {Der Wert muss mindestens {least} betragen} most {Der Wert darf höchstens {most} betragen} other {Der Wert muss zwischen {least} und {most} liegen}}; {value} ist nicht zulässig.',
  },
  earlierInputs: {
    message:
      'Eingaben für diese Aufnahme wurden am {savedAt, date, long} um {savedAt, time, short} gesichert.',
    remedy: 'Übernehmen Sie sie, oder fahren Sie so fort.',
  },
};
