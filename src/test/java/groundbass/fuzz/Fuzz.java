package groundbass.fuzz;

import java.time.Duration;
import java.util.Random;

/**
 * Spoils inputs for a while and prints what breaks, with the seed that breaks it again: {@code Fuzz TARGET SECONDS
 * [SEED]}, where {@code all} takes one target after another. Ends with 1 where anything was found.
 */
public final class Fuzz {
    private Fuzz() {}

    public static void main(String[] args) {
        if (args.length < 2 || !args[0].equals("all") && !Targets.ALL.containsKey(args[0])) {
            System.err.println("Fuzz TARGET SECONDS [SEED]; targets: all " + String.join(" ", Targets.ALL.keySet()));
            System.exit(2);
        }
        var time = Duration.ofSeconds(Long.parseLong(args[1]));
        long seed = args.length > 2 ? Long.parseLong(args[2]) : new Random().nextLong();
        boolean good = true;
        for (String name : Targets.ALL.keySet()) {
            if (args[0].equals("all") || args[0].equals(name)) {
                good &= run(name, time, seed);
            }
        }
        System.exit(good ? 0 : 1);
    }

    private static boolean run(String name, Duration time, long seed) {
        System.out.println(name + ": seed " + seed);
        try (var target = Targets.ALL.get(name).get()) {
            var fuzzing = new Fuzzing(target, seed);
            long end = System.nanoTime() + time.toNanos();
            while (System.nanoTime() < end) {
                fuzzing.runOnce();
            }
            System.out.println(name + ": " + fuzzing.inputs() + " inputs, "
                    + fuzzing.found().size() + " kinds of fault");
            fuzzing.found().forEach((kind, what) -> System.out.println("* " + kind + "\n" + what));
            return fuzzing.found().isEmpty();
        }
    }
}
