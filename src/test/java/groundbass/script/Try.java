package groundbass.script;

import java.util.Locale;

final class Try {
    public static void main(String[] args) {
        var line = FrozenSentencesTest.line(args[0]);
        var words = new RightWords(groundbass.text.Messages.of(Locale.ENGLISH), line.header().tuning());
        var lexicon = Lexicon.of(Locale.ENGLISH);
        for (String text : args[1].split("\n")) {
            System.out.println("== " + text);
            var context = new Context(line);
            if (args.length > 2) {
            for (var s : Words.sentences(text)) {
                var chunks = Chunker.chunks(new Terms(lexicon.terms(s)), line.header().tuning());
                chunks.forEach(c -> System.out.println("   " + c.chunk()));
                for (var g : Grouping.of(Reality.claimed(chunks), context)) {
                    System.out.println(" WHERE " + g.where() + " first=" + g.isPlacedFirst());
                    g.groups().forEach(
                            x -> System.out.println("   G away=" + x.isAway() + " path=" + x.isPath() + " " + x.notes()));
                    System.out.println("   Q " + g.quiets());
                }
            }
            }
            Proofreading.of(text, line, Locale.ENGLISH).statements().forEach(x -> System.out.println("   ["
                    + text.substring(x.from(), x.to()) + "] "
                    + (x.verdict() instanceof Verdict.Contradicts wrong ? "WRONG " + words.of(wrong.right()) : x.verdict())));
        }
    }
}
