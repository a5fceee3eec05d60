package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Runs;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Subject;
import groundbass.script.thread.stage.Together;
import groundbass.script.thread.stage.Wrongs;
import java.util.List;
import java.util.Optional;

/** Judges what notes that were spoken of are said to be. */
final class KnownNotes {
    private final Stage stage;

    KnownNotes(Stage stage) {
        this.stage = stage;
    }

    /** "Beats one and two are both crotchets": whatever happens there is as said. */
    Optional<Judged> everyThere(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        boolean bare = left.stream().allMatch(Constituent.Small.class::isInstance);
        boolean known =
                said.bars().size() == 1 && stage.timeline().has(said.bars().get(0));
        if (!bare || !known || said.scope().time().isEmpty() || left.stream().anyMatch(KnownNotes::isPronoun)) {
            return Optional.empty();
        }
        var stretches =
                stage.stretches(said.bars(), said.scope().time(), said.memory().beat());
        return Items.of(right, stage)
                .map(Items.Row::items)
                .filter(items -> items.size() == 1 && !stretches.isEmpty())
                .map(items -> {
                    var notes = stage.notes(stretches);
                    var other = stage.events(stretches).stream()
                            .filter(event -> !event.fits(items.get(0)))
                            .findFirst();
                    return other.map(event -> Judged.wrong(
                                    Wrongs.start(
                                            new Stretch(event.bar(), event.from(), event.to()), items.get(0), stage),
                                    notes))
                            .orElseGet(() -> Judged.agrees(notes));
                });
    }

    /** "The note on beat three is a dead note": the one that begins the beat. */
    Optional<Judged> there(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        boolean note =
                left.stream().filter(unit -> PlacedClause.is(unit, Tie.NOTE)).count() == 1
                        && left.stream()
                                .allMatch(unit -> PlacedClause.is(unit, Tie.NOTE) || Subject.isNone(List.of(unit)));
        boolean timed = said.scope().time().isPresent()
                && said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0));
        var stretches = note && timed && !right.isEmpty()
                ? stage.stretches(
                        said.bars(), said.scope().time(), said.memory().beat())
                : List.<Stretch>of();
        if (stretches.size() != 1) {
            return Optional.empty();
        }
        var begins = stage.notes(stretches).stream()
                .filter(at -> at.note().onset().equals(stretches.get(0).from()))
                .toList();
        return Items.of(right, stage)
                .map(Items.Row::items)
                .filter(items -> items.size() == 1 && !items.get(0).rest() && begins.size() == 1)
                .map(items -> Judged.of(
                        items.get(0).fits(begins.get(0)), Wrongs.note(begins.get(0), items.get(0), stage), begins));
    }

    private static boolean isPronoun(Constituent unit) {
        return PlacedClause.is(unit, Tie.THEY) || PlacedClause.is(unit, Tie.WE) || PlacedClause.is(unit, Tie.THAT);
    }

    /** What notes that are known are said to be. */
    Optional<Judged> told(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        var subject = Subject.of(left, said, stage);
        boolean all = subject.isEmpty() && left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.NOTE));
        var bar = said.bars().size() == 1 ? said.bars() : List.<Integer>of();
        boolean whole = all && left.stream().allMatch(Constituent.Small.class::isInstance) && !bar.isEmpty();
        if (whole && said.scope().time().isEmpty()) {
            return notesOf(bar.get(0), right);
        }
        var row = right.isEmpty() ? Optional.<Items.Row>empty() : Items.of(right, stage);
        if (subject.isEmpty() || row.isEmpty()) {
            return Optional.empty();
        }
        var notes = subject.get().notes();
        var items = row.get().items();
        if (items.size() > 1) {
            return items.size() == notes.size() && !hasRest(items)
                    ? Optional.of(inOrder(notes, items))
                    : Optional.empty();
        }
        var item = items.get(0);
        if (item.rest()) {
            return Optional.empty();
        }
        var wrong = notes.stream().filter(at -> !item.fits(at)).toList();
        if (wrong.isEmpty()) {
            return Optional.of(Judged.agrees(notes));
        }
        boolean sure = subject.get().together() || wrong.size() == notes.size();
        return Optional.of(sure ? Judged.wrong(Wrongs.note(wrong.get(0), item, stage), notes) : Judged.mixed(notes));
    }

    /** "So the notes are D, E and F": all of the bar, in their order. */
    private Optional<Judged> notesOf(int bar, List<Constituent> right) {
        var row = right.isEmpty() || !stage.timeline().has(bar) ? Optional.<Items.Row>empty() : Items.of(right, stage);
        var events = row.isEmpty()
                ? List.<Together>of()
                : stage.events(List.of(stage.timeline().whole(bar))).stream()
                        .filter(event -> !event.isRest())
                        .toList();
        return row.map(Items.Row::items).filter(items -> items.size() > 1).map(items -> {
            var notes = Runs.notes(events);
            boolean complete = items.size() == events.size();
            if (complete && Runs.find(items, events) == 0) {
                return Judged.agrees(notes);
            }
            return complete && Runs.isDenied(items, events)
                    ? Judged.wrong(Wrongs.first(items, events, stage.timeline().whole(bar), stage), notes)
                    : Judged.open(notes);
        });
    }

    private static boolean hasRest(List<Item> items) {
        return items.stream().anyMatch(Item::rest);
    }

    private Judged inOrder(List<At> notes, List<Item> items) {
        for (int i = 0; i < notes.size(); i++) {
            if (!items.get(i).fits(notes.get(i))) {
                return Judged.wrong(Wrongs.note(notes.get(i), items.get(i), stage), notes);
            }
        }
        return Judged.agrees(notes);
    }
}
