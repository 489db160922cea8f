/* Makes a worker one of an older browser, which has no files a worker can hold. */
Reflect.deleteProperty(FileSystemFileHandle.prototype, 'createSyncAccessHandle');
