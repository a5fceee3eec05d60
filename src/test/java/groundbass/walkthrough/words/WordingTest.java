package groundbass.walkthrough.words;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Arrival;
import groundbass.score.Dynamic;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import groundbass.text.Languages;
import groundbass.text.Messages;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordingTest {
    private final Wording english = new Wording(Messages.of(Locale.ENGLISH), Naming.USUAL);
    private final Wording german = new Wording(Messages.of(Locale.GERMAN), Naming.USUAL);

    // German note names (common practice, no source): B is H, B flat is B, and As, Es, Asas, Eses,
    // Heses are not formed by rule
    @ParameterizedTest
    @CsvSource({
        "C, C, C",
        "C#, C sharp, Cis",
        "Db, D flat, Des",
        "D#, D sharp, Dis",
        "Eb, E flat, Es",
        "E#, E sharp, Eis",
        "Fb, F flat, Fes",
        "F#, F sharp, Fis",
        "Gb, G flat, Ges",
        "G#, G sharp, Gis",
        "Ab, A flat, As",
        "A#, A sharp, Ais",
        "Bb, B flat, B",
        "B, B, H",
        "B#, B sharp, His",
        "Cb, C flat, Ces",
        "F##, F double sharp, Fisis",
        "Bbb, B double flat, Heses",
        "Abb, A double flat, Asas",
        "Ebb, E double flat, Eses",
        "Dbb, D double flat, Deses"
    })
    void notesHaveTheirNamesInBothLanguages(String note, String inEnglish, String inGerman) {
        var name = NoteName.parse(note).orElseThrow();
        assertThat(english.name(name)).isEqualTo(inEnglish);
        assertThat(german.name(name)).isEqualTo(inGerman);
    }

    // a minor key is written small in German (Duden: "a-Moll", "A-Dur"; from memory)
    @Test
    void keysAreNamedAsMusiciansNameThem() {
        var flat = new Key(NoteName.parse("Bb").orElseThrow(), Mode.MINOR);
        var sharp = new Key(NoteName.parse("F#").orElseThrow(), Mode.MAJOR);
        assertThat(english.key(flat)).isEqualTo("B flat minor");
        assertThat(german.key(flat)).isEqualTo("b-Moll");
        assertThat(german.key(sharp)).isEqualTo("Fis-Dur");
    }

    @Test
    void pluralsFollowTheNumber() {
        var dotted = NoteValue.dotted(Base.EIGHTH);
        assertThat(english.notes(dotted, 1)).isEqualTo("a dotted eighth");
        assertThat(english.notes(dotted, 2)).isEqualTo("two dotted eighths");
        assertThat(german.notes(dotted, 1)).isEqualTo("eine punktierte Achtel");
        assertThat(german.notes(dotted, 2)).isEqualTo("zwei punktierte Achtel");
        assertThat(english.rests(NoteValue.of(Base.HALF), 1)).isEqualTo("a half rest");
        assertThat(german.rests(NoteValue.of(Base.SIXTEENTH), 3)).isEqualTo("drei Sechzehntelpausen");
        assertThat(english.notes(new NoteValue(Base.QUARTER, 2), 1)).isEqualTo("a quarter (with two dots)");
    }

    @Test
    void listsEndWithAnd() {
        assertThat(english.list(List.of("one"))).isEqualTo("one");
        assertThat(english.list(List.of("one", "two"))).isEqualTo("one and two");
        assertThat(german.list(List.of("eins", "zwei", "drei"))).isEqualTo("eins, zwei und drei");
    }

    @Test
    void temposNameTheirBeat() {
        assertThat(english.tempo(new Tempo(58, Fraction.of(3, 8)), Meter.of(12, 8)))
                .isEqualTo("58 dotted-quarter beats per minute");
        assertThat(english.tempo(new Tempo(96, Fraction.of(1, 4)), Meter.COMMON))
                .isEqualTo("96 beats per minute");
        assertThat(german.tempo(new Tempo(200, Fraction.of(1, 8)), Meter.of(6, 8)))
                .isEqualTo("200 Achtel pro Minute");
    }

    @Test
    void everyWordOfTheScoreCanBeSaidInEveryLanguage() {
        var keys = Stream.of(
                        Stream.of(Technique.values()).map(each -> "pluck." + each.word()),
                        Stream.of(Arrival.Kind.values()).flatMap(each -> Stream.of(
                                        "arrive.%s", "reached.%s", "grace.%s.up", "grace.%s.down", "grace.%s.open")
                                .map(key -> key.formatted(each.word()))),
                        Stream.of(Mark.values()).map(each -> "mark." + each.word()),
                        Stream.of(Mode.values()).map(each -> "mode." + each),
                        Stream.of(Dynamic.values()).map(each -> "dynamic." + each))
                .flatMap(each -> each)
                .toList();
        for (var locale : Languages.SPOKEN) {
            var messages = Messages.of(locale);
            assertThat(keys).isNotEmpty().allMatch(key -> messages.has("walkthrough." + key));
        }
    }

    @Test
    void everyNoteValueAndNameCanBeSaidInEveryLanguage() {
        for (var words : List.of(english, german)) {
            for (var base : Base.values()) {
                for (int dots = 0; dots <= 2; dots++) {
                    var value = new NoteValue(base, dots);
                    assertThat(words.notes(value, 1)).isNotEqualTo(words.notes(value, 2));
                    assertThat(words.rests(value, 1)).isNotEqualTo(words.notes(value, 1));
                }
            }
            var names = Stream.of(Letter.values())
                    .flatMap(letter -> Stream.of(-2, -1, 0, 1, 2).map(by -> new NoteName(letter, by)))
                    .map(words::name);
            assertThat(names).hasSize(35).doesNotHaveDuplicates();
        }
    }
}
