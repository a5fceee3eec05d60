package groundbass.web.desk.publish;

import groundbass.text.Message;
import java.util.Optional;

/** What an hour stands for, while it is typed. */
public record HourView(Optional<Message> meaning) {}
