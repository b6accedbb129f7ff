import type { Catalogue } from '../catalogue';

/** What footage cannot be read, or only with a proviso. */
export const footageReasons: Catalogue['reasons'] = {
  archiveTooLarge: {
    message:
      '„{name}“ gibt {files} Dateien mit entpackt {size} GiB an, mehr als hier entpackt wird.',
    remedy: 'Entpacken Sie das Archiv, und öffnen Sie den Ordner.',
  },
  badArchive: {
    message: '„{name}“ lässt sich nicht entpacken: {why}.',
    remedy: 'Packen Sie es ohne Kennwort neu, oder entpacken Sie es und öffnen Sie den Ordner.',
  },
  emptyArchive: {
    message: '„{name}“ enthält keine Aufnahme.',
    remedy: 'Wählen Sie ein Archiv mit den Bildern einer Folge oder mit einem Clip.',
  },
  nestedArchive: {
    message: '„{name}“ enthält ein weiteres Archiv.',
    remedy: 'Entpacken Sie es einmal, und öffnen Sie, was darin ist.',
  },
  impossibleSize: {
    message: '„{name}“ gibt Bilder mit {width} x {height} Pixeln an, was nicht sein kann.',
    remedy:
      'Die Kopfdaten sind beschädigt, oder es ist eine andere Art Datei: Kopieren Sie sie noch einmal von der Kamera.',
  },
  rawMisfit: {
    message:
      '„{name}“ besteht nicht aus ganzen Bildern von {frame} Pixeln mit {bits} Bit: {left} Byte bleiben übrig.',
    remedy:
      'Geben Sie eine andere Größe, Bittiefe, andere Kopfdaten oder einen anderen Abstand zwischen den Bildern an.',
  },
  rawBeyondBits: {
    message:
      'Bild {frame} von „{name}“ enthält den Grauwert {value}; die angegebenen Bits fassen höchstens {white}.',
    remedy:
      'Geben Sie mehr Bits, die andere Reihenfolge der Bytes oder eine andere Größe der Kopfdaten oder des Abstands an.',
  },
  fieldsSeparated: {
    message:
      'Jedes Bild ist ein Halbbild eines Films mit Zeilensprung: Jede zweite Zeile wurde aufgenommen, und nur diese bestimmen den Mittelpunkt der Kugel; die Zeilen dazwischen sind aufgefüllt. Halb so viele Zeilen bestimmen ihn weniger gut; seine Unsicherheit gibt das an.',
    remedy:
      'Nichts zu tun, wenn die Bildrate in Halbbildern je Sekunde angegeben ist. Lassen Sie die Kamera beim nächsten Schuss ganze Bilder aufnehmen.',
  },
  fieldsWoven: {
    message:
      'Die Datei sagt, dass sie Zeilensprung hat, und ihre Bilder bleiben ganz: Jedes zeigt zwei Augenblicke.',
    remedy:
      'Lassen Sie die Halbbilder trennen, es sei denn, die Kamera hat ganze Bilder aufgenommen.',
  },
  imagesLoop: {
    message:
      '„{name}“ ist beschädigt: Nach {count, plural, one {# Bild} other {# Bildern}} führt die Liste der Bilder auf ein früheres zurück.',
    remedy: 'Kopieren Sie die Datei noch einmal, oder sichern Sie die Bilder einzeln.',
  },
  tooManyImages: {
    message: '„{name}“ führt mehr als {most} Bilder auf.',
    remedy: 'Teilen Sie die Datei, oder sichern Sie den Film als Video.',
  },
  tooManyParts: {
    message: '„{name}“ ist beschädigt: Die Datei besteht aus mehr als {most} Teilen.',
    remedy: 'Kopieren Sie den Clip noch einmal von der Kamera.',
  },
  noFootage: {
    message: 'Es ist keine Aufnahme geöffnet.',
    remedy: 'Öffnen Sie zuerst einen Clip.',
  },
  noFrames: {
    message: 'Es kamen keine Bilder an.',
    remedy: 'Wählen Sie einen Clip oder Standbilder mit mindestens einem Bild.',
  },
  nothingChosen: {
    message: 'Dort wurde keine Aufnahme gefunden.',
    remedy: 'Wählen Sie einen Clip oder einen Ordner mit Bildern.',
  },
};
