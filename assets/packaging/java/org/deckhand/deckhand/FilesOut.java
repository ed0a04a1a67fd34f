package org.deckhand.deckhand;

import android.content.ContentProvider;
import android.content.ContentValues;
import android.database.Cursor;
import android.database.MatrixCursor;
import android.net.Uri;
import android.os.ParcelFileDescriptor;
import android.provider.OpenableColumns;
import java.io.File;
import java.io.FileNotFoundException;

/**
 * Hands out what lies in the folder "shared" of the app's own files, to be read, to whom the app has given leave. Nothing else of
 * the app can be reached by it, and nothing can be written. screens/phone/share.py puts a copy there for each file it hands on.
 */
public class FilesOut extends ContentProvider {
    private static final String[] COLUMNS = {OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE};

    private File file(Uri uri) throws FileNotFoundException {
        String name = uri.getLastPathSegment();
        File folder = new File(getContext().getFilesDir(), "shared");
        File found = new File(folder, name == null ? "" : name);
        if (name == null || name.contains("/") || !found.isFile()) {
            throw new FileNotFoundException("no such file is handed out");
        }
        return found;
    }

    @Override
    public boolean onCreate() {
        return true;
    }

    @Override
    public ParcelFileDescriptor openFile(Uri uri, String mode) throws FileNotFoundException {
        if (!"r".equals(mode)) {
            throw new FileNotFoundException("only to be read");
        }
        return ParcelFileDescriptor.open(file(uri), ParcelFileDescriptor.MODE_READ_ONLY);
    }

    @Override
    public Cursor query(Uri uri, String[] columns, String where, String[] given, String order) {
        String[] wanted = columns == null ? COLUMNS : columns;
        MatrixCursor rows = new MatrixCursor(wanted);
        try {
            File found = file(uri);
            Object[] row = new Object[wanted.length];
            for (int place = 0; place < wanted.length; place++) {
                if (OpenableColumns.DISPLAY_NAME.equals(wanted[place])) {
                    row[place] = found.getName();
                } else if (OpenableColumns.SIZE.equals(wanted[place])) {
                    row[place] = found.length();
                }
            }
            rows.addRow(row);
        } catch (FileNotFoundException problem) {
            return rows;
        }
        return rows;
    }

    @Override
    public String getType(Uri uri) {
        String name = String.valueOf(uri.getLastPathSegment());
        if (name.endsWith(".html")) {
            return "text/html";
        }
        if (name.endsWith(".txt")) {
            return "text/plain";
        }
        if (name.endsWith(".csv")) {
            return "text/csv";
        }
        if (name.endsWith(".png")) {
            return "image/png";
        }
        return name.endsWith(".json") ? "application/json" : "application/octet-stream";
    }

    @Override
    public Uri insert(Uri uri, ContentValues values) {
        throw new UnsupportedOperationException();
    }

    @Override
    public int delete(Uri uri, String where, String[] given) {
        throw new UnsupportedOperationException();
    }

    @Override
    public int update(Uri uri, ContentValues values, String where, String[] given) {
        throw new UnsupportedOperationException();
    }
}
