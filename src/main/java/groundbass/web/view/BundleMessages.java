package groundbass.web.view;

import groundbass.text.Messages;
import org.thymeleaf.context.ITemplateContext;
import org.thymeleaf.messageresolver.AbstractMessageResolver;

/** Lets {@code #{key}} in a template read the message bundles; a missing key is a mistake and fails. */
final class BundleMessages extends AbstractMessageResolver {
    @Override
    public String resolveMessage(ITemplateContext context, Class<?> origin, String key, Object[] args) {
        return Messages.of(context.getLocale()).say(key, args == null ? new Object[0] : args);
    }

    @Override
    public String createAbsentMessageRepresentation(
            ITemplateContext context, Class<?> origin, String key, Object[] args) {
        throw new IllegalArgumentException("no message has the key " + key);
    }
}
