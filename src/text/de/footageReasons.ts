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
  brokenParts: {
    message:
      '„{name}“ ist beschädigt: Was bei Byte {at} steht, ist kein Teil eines Films dieser Art.',
    remedy: 'Kopieren Sie den Clip noch einmal von der Kamera.',
  },
  brokenIndex: {
    message:
      '„{name}“ ist beschädigt: Das Verzeichnis hat Zeiten für {timed} und Orte für {sized} Bilder.',
    remedy: 'Kopieren Sie den Clip noch einmal von der Kamera.',
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
  undecodable: {
    message:
      '{form, select, clip {Kein Decoder hier liest diesen Clip: {why}.} coded {„{name}“ ist mit {codec} codiert (Pixelformat {format}), was kein Decoder hier liest.} picture {Kein Decoder hier liest „{name}“ ({format}, {pixels}).} noStart {Der Film hat kein Bild, bei dem ein Decoder beginnen könnte.} other {Der Decoder des Browsers liefert Bilder ohne Luma-Ebene ({format}).}}',
    remedy:
      '{form, select, clip {Wandeln Sie den Clip in FFV1, ProRes oder H.264 um, und öffnen Sie das.} coded {Öffnen Sie ihn in einem anderen Browser, oder wandeln Sie ihn in H.264, ProRes oder FFV1 um.} picture {Speichern Sie die Bilder als PNG mit 8 oder 16 Bit.} noStart {Kopieren Sie den Clip noch einmal von der Kamera.} other {Verwenden Sie einen anderen Browser.}}',
  },
  truncated: {
    message:
      '{form, select, endsEarly {Der Film endet zu früh: Er führt {at, select, frame {Bild {frame} von {frames}} other {„{name}“}} auf, doch dort kommt nichts.} frames {„{name}“ ist abgeschnitten: {there} von {stated} Bildern sind da.} midFrame {„{name}“ ist mitten in einem Bild abgeschnitten.} list {„{name}“ ist abgeschnitten: Die Liste der Bilder reicht über das Ende hinaus.} noFrame {Der Film führt Bild {frame} auf, der Decoder liefert dort aber keines.} bytes {„{name}“ ist abgeschnitten: Die Datei soll {stated} Byte haben und hat {there}.} other {„{name}“ ist abgeschnitten: Das Verzeichnis (moov), das Kameras zuletzt schreiben, fehlt.}}',
    remedy:
      '{form, select, endsEarly {Kopieren Sie den Clip noch einmal von der Kamera, oder lassen Sie sein Ende weg.} list {Kopieren Sie die Datei noch einmal.} noFrame {Kopieren Sie den Clip noch einmal von der Kamera, oder lassen Sie diesen Teil weg.} index {Kopieren Sie den Clip noch einmal von der Kamera; eine abgebrochene Aufnahme kann nur die Kamera selbst reparieren.} other {Kopieren Sie den Clip noch einmal von der Kamera.}}',
  },
  decoderFailed: {
    message:
      '{form, select, stalled {Der Decoder ffmpeg hat seit {seconds} s weder etwas gelesen noch geliefert.} brokeDown {Der Decoder ffmpeg ist ausgefallen: {why}.} damaged {Der Film konnte bei {at, select, frame {Bild {frame} von {frames}} other {„{name}“}} nicht decodiert werden: {why}.} differs {Bild {frame} ist für einen zweiten Decoder ein anderes: Der Film ist davor oder dort beschädigt.} counts {Der Browser findet im Film {frames} Bilder und ffmpeg {others}: Das Verzeichnis der Bilder ist beschädigt oder keines, das beide verstehen.} browser {Der Decoder des Browsers gab auf: {why}.} browserStalled {Der Decoder des Browsers hat seit {seconds} s kein Bild geliefert.} other {Bild {frame} hat eine andere Größe als das erste ({width} x {height}).}}',
    remedy:
      '{form, select, stalled {Versuchen Sie den Clip in einem anderen Format oder einen kürzeren Teil davon.} brokeDown {Versuchen Sie den Clip in einem anderen Format oder einen kürzeren Teil davon.} damaged {Der Clip ist dort beschädigt: Kopieren Sie ihn noch einmal von der Kamera, oder lassen Sie diesen Teil weg.} differs {Kopieren Sie den Clip noch einmal von der Kamera, oder lassen Sie diesen Teil weg.} counts {Kopieren Sie den Clip noch einmal von der Kamera; hilft das nicht, wandeln Sie ihn um.} browser {Der Clip ist dort vielleicht beschädigt: Kopieren Sie ihn noch einmal von der Kamera, oder lassen Sie diesen Teil weg.} browserStalled {Laden Sie die Seite neu; geschieht es wieder, wandeln Sie den Clip um.} other {Schneiden Sie den Clip dort, wo sich die Größe ändert.}}',
  },
  decoderMissing: {
    message: 'Der Decoder ffmpeg konnte nicht geladen werden: {why}.',
    remedy:
      'Laden Sie die Seite neu; hilft das nicht, wurde das Programm nicht vollständig kopiert.',
  },
  emptyFile: {
    message: '„{name}“ ist leer (null Byte).',
    remedy: 'Kopieren Sie die Datei noch einmal von der Kamera.',
  },
  noVideoTrack: {
    message: '„{name}“ enthält nur Ton, keinen Film.',
    remedy: 'Wählen Sie den Clip, den die Kamera aufgenommen hat.',
  },
  notFootage: {
    message:
      '{form, select, clip {„{name}“ ist kein Video.} picture {„{name}“ ist kein Bild einer Bildfolge (PNG, TIFF, BMP oder JPEG).} other {Es wurde keine Datei angegeben.}}',
    remedy:
      '{form, select, clip {Wählen Sie den Clip so, wie ihn die Kamera gespeichert hat.} picture {Wählen Sie einen einzelnen Clip oder nur Bilder.} other {Wählen Sie einen Clip.}}',
  },
  mixedSizes: {
    message:
      'Die Bilder gleichen sich nicht: „{one}“ hat {oneSize} Pixel mit {oneBits} Bit, „{other}“ hat {otherSize} mit {otherBits} Bit, oder Format, Farbe oder Drehung weichen ab.',
    remedy: 'Lassen Sie die Bilder weg, die nicht zu diesem Film gehören.',
  },
  noFrame: {
    message: 'Der Film hat kein Bild {frame}.',
  },
  singleFrame: {
    message:
      '{form, select, file {„{name}“ enthält {frames, plural, =0 {kein Bild} other {ein einziges Bild}}.} other {Der Film hat ein einziges Bild; eine Geschwindigkeit braucht mindestens drei mit der Kugel.}}',
    remedy:
      '{form, select, file {Wählen Sie einen Clip oder alle Bilder einer Folge zusammen.} other {Wählen Sie den Clip selbst, nicht ein Standbild daraus.}}',
  },
  unreadable: {
    message: '„{name}“ lässt sich nicht mehr lesen: {why}.',
    remedy: 'Legen Sie die Datei zurück, und öffnen Sie sie erneut.',
  },
  severalClips: {
    message: 'Es wurden mehrere Clips angegeben ({names}); geöffnet wird einer auf einmal.',
    remedy: 'Wählen Sie einen Clip oder die Bilder einer Folge.',
  },
  severalShots: {
    message: 'Es wurden {files} Schussdateien angegeben; geöffnet wird eine auf einmal.',
    remedy: 'Wählen Sie eine Schussdatei mit ihrer Aufnahme.',
  },
  decoderChosen: {
    message:
      '{form, select, browser {Dieser Browser dekodiert {codec} selbst.} codec {Kein Browser dekodiert {codec} Bild für Bild.} codecIn {Kein Browser dekodiert {codec} in {container}.} film {Dieser Browser dekodiert diesen {codec}-Film nicht.} container {Kein Browser liest {container} Bild für Bild.} raw {Die Datei hat keinen Dateikopf; sie wird gelesen wie angegeben.} images {Browser verringern Bilder auf 8 Bit je Farbe; ffmpeg lässt sie, wie sie sind.} command {Die Befehlszeile hat keinen Browser zum Dekodieren.} without {Dieser Browser hat kein WebCodecs.} other {}}',
  },
  footageMismatch: {
    message:
      'Die Schussdatei beruht auf {path}{more, plural, =0 {} other { und # weiteren Dateien}} (SHA-256 {expected}…); {name}{others, plural, =0 { ist eine andere Datei} other { und # weitere sind andere Dateien}} ({found}…).',
    remedy:
      'Wählen Sie die Aufnahme, auf der sie beruht, oder übernehmen Sie ihre Eingaben in einen neuen Schuss für diese Aufnahme.',
  },
};
