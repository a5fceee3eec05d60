package groundbass.script;

import java.util.Locale;

final class Try {
    public static void main(String[] args) {
        var line = FrozenSentencesTest.line(args[0]);
        var lexicon = Lexicon.of(Locale.ENGLISH);
        var context = new Context(line);
        for (var s : Words.sentences(args[1])) {
            var chunks = Chunker.chunks(new Terms(lexicon.terms(s)), line.header().tuning());
            chunks.forEach(c -> System.out.println("   " + c.chunk()));
            for (var g : Grouping.of(Reality.claimed(chunks), context)) {
                System.out.println(" WHERE " + g.where() + " first=" + g.isPlacedFirst());
                g.groups().forEach(x -> System.out.println("   G away=" + x.isAway() + " path=" + x.isPath() + " " + x.notes()));
                System.out.println("   Q " + g.quiets());
            }
        }
        Proofreading.of(args[1], line, Locale.ENGLISH).statements().forEach(x -> System.out.println(
                "[" + args[1].substring(x.from(), x.to()) + "] " + x.verdict() + " " + x.position()));
    }
}
