package doughtide.report.page;

import doughtide.core.Internal;
import doughtide.core.quantity.InputException;

/** Content that does not fit on the one side of a page. The message is one line with the reason. */
@Internal
public final class PageLayoutException extends InputException {
  private static final long serialVersionUID = 1L;

  PageLayoutException(String message) {
    super(message);
  }
}
