package groundbass.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Small scores as other programs write them, after the reference of MusicXML 4.0; the elements are from memory. */
final class Scores {
    static final String DOCTYPE = "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 3.1 Partwise//EN\""
            + " \"http://www.musicxml.org/dtds/partwise.dtd\">";

    /** Four quarters to the bar, in quarters, written an octave above what sounds. */
    static final String HEAD = "<attributes><divisions>4</divisions><key><fifths>0</fifths><mode>minor</mode></key>"
            + "<time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>F</sign><line>4</line></clef>"
            + "<transpose><chromatic>0</chromatic><octave-change>-1</octave-change></transpose></attributes>"
            + "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>96</per-minute>"
            + "</metronome></direction-type></direction>";

    private Scores() {}

    /** One part that is called Bass. */
    static byte[] bass(String... measures) {
        return partwise(Map.of("Bass", List.of(measures)));
    }

    /** Parts by name, in the order of their names. */
    static byte[] partwise(Map<String, List<String>> parts) {
        var names = parts.keySet().stream().sorted().toList();
        String music = names.stream()
                .map(name -> "<part id='" + id(names, name) + "'>" + numbered(parts.get(name)) + "</part>")
                .collect(Collectors.joining());
        return bytes(DOCTYPE + "<score-partwise version='3.1'>" + list(names) + music + "</score-partwise>");
    }

    static byte[] timewise(Map<String, List<String>> parts) {
        var names = parts.keySet().stream().sorted().toList();
        int count = parts.values().iterator().next().size();
        String music = IntStream.range(0, count)
                .mapToObj(i -> "<measure number='" + (i + 1) + "'>"
                        + names.stream()
                                .map(name -> "<part id='" + id(names, name) + "'>"
                                        + parts.get(name).get(i) + "</part>")
                                .collect(Collectors.joining())
                        + "</measure>")
                .collect(Collectors.joining());
        return bytes("<score-timewise version='1.0'>" + list(names) + music + "</score-timewise>");
    }

    private static String id(List<String> names, String name) {
        return "P" + (names.indexOf(name) + 1);
    }

    private static String list(List<String> names) {
        return names.stream()
                .map(name ->
                        "<score-part id='" + id(names, name) + "'><part-name>" + name + "</part-name></score-part>")
                .collect(Collectors.joining("", "<part-list>", "</part-list>"));
    }

    private static String numbered(List<String> measures) {
        var all = new ArrayList<String>();
        for (int i = 0; i < measures.size(); i++) {
            all.add("<measure number='" + (i + 1) + "'>" + measures.get(i) + "</measure>");
        }
        return String.join("", all);
    }

    static byte[] bytes(String document) {
        return ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + document).getBytes(StandardCharsets.UTF_8);
    }

    /** A note of so many sixteenths. */
    static String note(String step, int octave, int sixteenths, String... more) {
        return "<note><pitch><step>" + step + "</step><octave>" + octave + "</octave></pitch><duration>" + sixteenths
                + "</duration>" + String.join("", more) + "</note>";
    }

    static String chord(String step, int octave, int sixteenths) {
        return note(step, octave, sixteenths).replace("<note>", "<note><chord/>");
    }

    static String rest(int sixteenths) {
        return "<note><rest/><duration>" + sixteenths + "</duration></note>";
    }

    static String technical(String content) {
        return "<notations><technical>" + content + "</technical></notations>";
    }
}
