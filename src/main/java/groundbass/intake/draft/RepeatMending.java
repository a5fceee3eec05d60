package groundbass.intake.draft;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Bar;
import groundbass.score.Passes;
import groundbass.score.Repeats;
import groundbass.score.Roadmap;
import groundbass.text.Message;
import java.util.List;

/** Takes out signs of repeats and jumps that contradict one another, and says where they stood. */
final class RepeatMending {
    private RepeatMending() {}

    static List<Bar> of(List<Bar> bars, NoticeList notices) {
        var faults = Passes.faults(bars);
        if (faults.isEmpty()) {
            return bars;
        }
        if (Passes.repeatFaults(bars).isEmpty()) {
            faults.forEach(fault -> notices.leftOut(fault.bar(), Message.of("intake.left.jumps")));
            return bars.stream()
                    .map(bar -> bar.with(bar.repeats().with(Roadmap.NONE)))
                    .toList();
        }
        faults.forEach(fault -> notices.leftOut(fault.bar(), Message.of("intake.left.repeats")));
        return bars.stream().map(bar -> bar.with(Repeats.NONE)).toList();
    }
}
