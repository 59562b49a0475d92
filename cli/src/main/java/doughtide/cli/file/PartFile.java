package doughtide.cli.file;

import doughtide.core.quantity.InputException;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * The unfinished output of a long job: a file named like the finished one with {@code .part} at its
 * end, which a later run can go on with. Whole lines count; what stands after the last line end is
 * cut off.
 */
public final class PartFile implements Closeable {

  private static final int BLOCK = 1 << 16;

  private final Path path;
  private final FileChannel channel;
  private long lines;
  private long lastLineStart;
  private long end;

  private PartFile(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * Opens the file, made if it is not there.
   *
   * @throws InputException if another run is writing it
   */
  public static PartFile open(Path path, String shown) throws IOException {
    FileChannel channel =
        FileChannel.open(
            path, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    PartFile file = new PartFile(path, channel);
    if (!file.locked()) {
      channel.close();
      throw new InputException(
          FileProblem.quoted(shown) + " is being written by another run: wait for it to end");
    }
    return file;
  }

  private boolean locked() throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  /** Forgets what an earlier run wrote. */
  public void clear() throws IOException {
    channel.truncate(0);
  }

  /** Counts the whole lines and cuts off what stands after the last one. */
  public void keepWholeLines() throws IOException {
    ByteBuffer block = ByteBuffer.allocate(BLOCK);
    long at = 0;
    while (channel.read(block, at) > 0) {
      for (int i = 0; i < block.position(); i++) {
        if (block.get(i) == '\n') {
          lines++;
          lastLineStart = end;
          end = at + i + 1;
        }
      }
      at += block.position();
      block.clear();
    }
    channel.truncate(end);
    channel.position(end);
  }

  /** Number of whole lines found. */
  public long lines() {
    return lines;
  }

  /** Whether the last whole line is this one. */
  public boolean endsWith(byte[] line) throws IOException {
    if (end - lastLineStart != line.length) {
      return false;
    }
    ByteBuffer last = ByteBuffer.allocate(line.length);
    long at = lastLineStart;
    while (last.hasRemaining()) {
      int read = channel.read(last, at + last.position());
      if (read < 0) {
        return false;
      }
    }
    return Arrays.equals(last.array(), line);
  }

  /** For what follows. */
  public OutputStream out() {
    return Channels.newOutputStream(channel);
  }

  /** Makes sure that the disk has it all. */
  public void force() throws IOException {
    channel.force(true);
  }

  public Path path() {
    return path;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
