package groundbass.writing;

import java.util.List;

/**
 * What one stem direction carries through a bar, without gaps: the elements' lengths add up to the bar's.
 *
 * @param beams groups in order; an element outside every group has flags
 * @param tuplets groups in order; they do not nest
 */
public record Voice(List<Element> elements, List<BeamGroup> beams, List<TupletGroup> tuplets) {
    public Voice {
        elements = List.copyOf(elements);
        beams = List.copyOf(beams);
        tuplets = List.copyOf(tuplets);
    }
}
